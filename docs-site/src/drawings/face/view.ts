import type { System } from "@plumbmark/calc";
import type { Cell, Face } from "@plumbmark/core";
import { type Scale, scaleFor } from "../shared/scale.js";
import type { Box, PaperPoint } from "../shared/svg.js";

/** A face on the paper, from the audience or from behind. */
export interface View {
  readonly face: Face;
  readonly rear: boolean;
  /** Undefined when the size of the panel is not known: then nothing is to scale. */
  readonly scale: Scale | undefined;
  readonly outline: Box;
  readonly box: (cell: Cell) => Box;
  readonly centre: (cell: Cell) => PaperPoint;
  /** Size of a cell on the paper. */
  readonly cell: { readonly width: number; readonly height: number };
}

interface Room {
  readonly width: number;
  readonly height: number;
}

const LARGEST_UNSCALED = 20;

function sizes(face: Face, room: Room, system: System): Pick<View, "scale" | "cell"> {
  const { width, height } = face;
  const [columns, rows] = [Math.max(face.columns, 1), Math.max(face.rows, 1)];
  if (!width.known || !height.known || width.value <= 0 || height.value <= 0) {
    const side = Math.min(LARGEST_UNSCALED, room.width / columns, room.height / rows);
    return { scale: undefined, cell: { width: side, height: side } };
  }
  const [across, down] = [scaleFor(width.value, room.width, system), scaleFor(height.value, room.height, system)];
  const scale = across.ratio > down.ratio ? across : down;
  return {
    scale,
    cell: { width: scale.mm(width.value) / columns, height: scale.mm(height.value) / rows },
  };
}

/** Size of the drawn face, before its place is known. */
export function extentOf(face: Face, room: Room, system: System): Room & Pick<View, "scale" | "cell"> {
  const { scale, cell } = sizes(face, room, system);
  return { scale, cell, width: cell.width * face.columns, height: cell.height * face.rows };
}

/** From behind, column 1 is at the right. */
export function viewOf(face: Face, rear: boolean, [x, y]: PaperPoint, extent: ReturnType<typeof extentOf>): View {
  const { scale, cell, width, height } = extent;
  const box = ({ row, column }: Cell): Box => ({
    x: x + (rear ? face.columns - 1 - column : column) * cell.width,
    y: y + row * cell.height,
    ...cell,
  });
  const centre = (each: Cell): PaperPoint => {
    const at = box(each);
    // In a small cell the line makes room for the name above it.
    const lower = isLow({ cell }) ? 0.12 : 0;
    return [at.x + at.width / 2, at.y + at.height * (0.5 + lower)];
  };
  return { face, rear, scale, cell, outline: { x, y, width, height }, box, centre };
}

/** Whether a cell that holds its name is low: the name is smaller, and what else is in it stands lower. */
export const isLow = ({ cell }: Pick<View, "cell">): boolean => roomIn({ cell }) === "name" && cell.height < 13;

/** How strong lines are to be: those of small cells would run into one another. */
export const lineWeight = ({ cell }: Pick<View, "cell">): number =>
  Math.min(1, Math.max(0.3, Math.min(cell.width, cell.height) / 4.6));

/** Whether there is room in a cell for its name beside the line, for a number alone, or for nothing. */
export function roomIn({ cell }: Pick<View, "cell">): "name" | "number" | "nothing" {
  const least = Math.min(cell.width, cell.height);
  return least >= 9.5 ? "name" : least >= 4.6 ? "number" : "nothing";
}
