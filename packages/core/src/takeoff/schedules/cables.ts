import type { Data } from "../../document/yaml/yaml.js";
import type { LaidCable } from "../cables.js";
import { asWritten, type ColumnOf } from "../table.js";
import { isWord } from "../word.js";

/** Conductor of a power cable, category of a data cable, signals of a video cable, in the words of the catalogue. */
export function madeOf({ part }: LaidCable): string {
  if (!part) return "";
  const { conductor, conductors, jacket, fuse, category, strands, carries, medium } = part.data;
  const words =
    part.kind === "power-cable"
      ? [
          conductor,
          typeof conductors === "number" ? `${conductors} conductors` : undefined,
          jacket,
          isWord(fuse) ? `fuse ${fuse}` : undefined,
        ]
      : part.kind === "data-cable"
        ? [isWord(category) ? `category ${category}` : undefined, strands]
        : [medium, ...(Array.isArray(carries) ? (carries as readonly Data[]) : [])];
  return words.filter(isWord).join(", ");
}

/** What is asked for first stands first: a phone shows the first columns only, until they are moved aside. */
export const cableColumns: readonly ColumnOf<LaidCable>[] = [
  { name: "Label", of: ({ label }) => label },
  { name: "From", of: ({ from }) => from.place },
  { name: "To", of: ({ to }) => to.place },
  { name: "As written", of: ({ length }) => asWritten(length) },
  { name: "Part", of: ({ name }) => name },
  { name: "From connector", of: ({ from }) => from.connector },
  { name: "To connector", of: ({ to }) => to.connector },
  { name: "Kind", of: ({ kind }) => kind },
  { name: "Made of", of: madeOf },
  { name: "Length", kind: "length", of: ({ length }) => length },
  { name: "Reach", kind: "length", of: ({ reach }) => reach },
];
