import type { Build } from "../../model/build.js";
import type { PlacedPart } from "../../model/picture/placement.js";
import { type ColumnOf, NOT_STATED } from "../table.js";

/** The parts that the picture of every folded face is cut into, as whoever makes it, or the source, has to cut it. */
export const cutLines = ({ picture }: Build): readonly PlacedPart[] =>
  picture.placements.filter(({ isFolded }) => isFolded).flatMap(({ parts }) => parts);

export const cutColumns: readonly ColumnOf<PlacedPart>[] = [
  { name: "Face", of: ({ placement }) => placement.face.name },
  { name: "Part", of: ({ isUnread, words }) => (isUnread ? NOT_STATED : words) },
  { name: "On the face, across", kind: "pixels", of: ({ left }) => left },
  { name: "On the face, down", kind: "pixels", of: ({ top }) => top },
  { name: "Width", kind: "pixels", of: ({ width }) => width },
  { name: "Height", kind: "pixels", of: ({ height }) => height },
  { name: "On the raster, across", kind: "pixels", of: ({ x }) => x },
  { name: "On the raster, down", kind: "pixels", of: ({ y }) => y },
];
