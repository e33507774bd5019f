import type { Build } from "../../model/build.js";
import type { PlacedPart } from "../../model/picture/placement.js";
import { type ColumnOf, NOT_STATED } from "../table.js";

/** The parts that the picture of every folded face is cut into, as whoever makes it, or the source, has to cut it. */
export const cutLines = ({ picture }: Build): readonly PlacedPart[] =>
  picture.placements.filter(({ isFolded }) => isFolded).flatMap(({ parts }) => parts);

export const cutColumns: readonly ColumnOf<PlacedPart>[] = [
  { name: "Face", of: ({ placement }) => placement.face.name },
  { name: "Part", of: ({ isUnread, words }) => (isUnread ? NOT_STATED : words) },
  { name: "Face across", kind: "pixels", of: ({ left }) => left },
  { name: "Face down", kind: "pixels", of: ({ top }) => top },
  { name: "Width", kind: "pixels", of: ({ width }) => width },
  { name: "Height", kind: "pixels", of: ({ height }) => height },
  { name: "Raster across", kind: "pixels", of: ({ x }) => x },
  { name: "Raster down", kind: "pixels", of: ({ y }) => y },
];
