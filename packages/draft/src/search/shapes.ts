/** Columns and rows of a face of panels that are alike. */
export interface Shape {
  readonly columns: number;
  readonly rows: number;
  /** Degrees the panels are turned by, where they lie on their side. */
  readonly rotated?: OnSide;
}

export type OnSide = 90 | 270;

/** What is asked of one side of a face, in metres. */
export interface Extent {
  readonly how: "exactly" | "at most" | "at least" | "about";
  readonly length: number;
}

/** A side wished for as “about” may be a tenth off either way, and half a panel: nearer no whole number may come. */
const ABOUT = 0.1;
const NEAR = 1e-6;

/**
 * Whether a side of this length is what was asked for.
 * @param step the side of one panel
 */
export function suits(extent: Extent | undefined, length: number, step: number): boolean {
  if (!extent) return true;
  const { how, length: asked } = extent;
  if (how === "at most") return length <= asked + NEAR;
  if (how === "at least") return length >= asked - NEAR;
  if (how === "exactly") return Math.abs(length - asked) <= NEAR;
  return Math.abs(length - asked) <= Math.max(asked * ABOUT, step / 2) + NEAR;
}

/**
 * Every face of at most `most` panels whose sides are what was asked for, the largest first.
 * @param width,height of one panel as it is mounted, in metres
 */
export function shapes(
  { width, height }: { readonly width: number; readonly height: number },
  asked: { readonly width?: Extent; readonly height?: Extent },
  most: number,
): readonly Shape[] {
  const found: Shape[] = [];
  for (let columns = 1; columns <= most; columns += 1) {
    if (!suits(asked.width, columns * width, width)) continue;
    for (let rows = 1; columns * rows <= most; rows += 1)
      if (suits(asked.height, rows * height, height)) found.push({ columns, rows });
  }
  return found.sort((a, b) => b.columns * b.rows - a.columns * a.rows || b.columns - a.columns);
}

/** Pairs of faces that can be made of the same panels at the same time, each pair once, those that use most first. */
export function pairs(all: readonly Shape[], most: number): readonly (readonly [Shape, Shape])[] {
  const count = ({ columns, rows }: Shape): number => columns * rows;
  return all
    .flatMap((first, index) => all.slice(index).map((second) => [first, second] as const))
    .filter(([first, second]) => count(first) + count(second) <= most)
    .sort((a, b) => count(b[0]) + count(b[1]) - count(a[0]) - count(a[1]));
}
