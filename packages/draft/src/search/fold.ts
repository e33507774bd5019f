import { divide } from "./divide.js";

/** A face of whole panels, with the pixels of one of them as it stands in the face. */
export interface PixelFace {
  readonly columns: number;
  readonly rows: number;
  readonly panel: { readonly wide: number; readonly high: number };
}

/** A piece of a folded face: which of its columns or rows, from 0, and its top-left pixel on the raster. */
export interface FoldPiece {
  readonly first: number;
  readonly last: number;
  readonly x: number;
  readonly y: number;
}

export interface FoldedFace {
  /** What it is cut into: columns that lie one under another, or rows that lie side by side. */
  readonly along: "columns" | "rows";
  readonly pieces: readonly FoldPiece[];
}

/**
 * Cuts a face that is wider, or higher, than a raster into the fewest pieces of whole panels the raster takes, as equal
 * as can be. Nothing between the pieces can be gained by laying some side by side: two that fit so would be one piece.
 * @returns undefined where the face fits whole, or where no such pieces do
 */
export function fold(
  { columns, rows, panel }: PixelFace,
  raster: { readonly width: number; readonly height: number },
): FoldedFace | undefined {
  const [wide, high] = [columns * panel.wide, rows * panel.high];
  const [tooWide, tooHigh] = [wide > raster.width, high > raster.height];
  // Of a face that is both no strip fits: it is as high, or as wide, as the whole of it.
  if (tooWide === tooHigh) return undefined;
  const along = tooWide ? "columns" : "rows";
  const [count, most] = tooWide
    ? [columns, Math.floor(raster.width / panel.wide)]
    : [rows, Math.floor(raster.height / panel.high)];
  if (most < 1) return undefined;
  const places = divide(
    Array.from({ length: count }, (_, place) => place),
    most,
  );
  if (tooWide ? places.length * high > raster.height : places.length * wide > raster.width) return undefined;
  return {
    along,
    pieces: places.map((piece, index) => ({
      first: piece[0] as number,
      last: piece.at(-1) as number,
      x: tooWide ? 0 : index * wide,
      y: tooWide ? index * high : 0,
    })),
  };
}
