import type { Data } from "../../document/yaml.js";
import type { LaidCable } from "../cables.js";
import { type ColumnOf, written } from "../table.js";
import { isWord } from "../word.js";

/** Conductor of a power cable, category of a data cable, signals of a video cable, in the words of the catalogue. */
export function madeOf({ part }: LaidCable): string {
  if (!part) return "";
  const { conductor, conductors, jacket, category, strands, carries, medium } = part.data;
  const words =
    part.kind === "power-cable"
      ? [conductor, typeof conductors === "number" ? `${conductors} conductors` : undefined, jacket]
      : part.kind === "data-cable"
        ? [isWord(category) ? `category ${category}` : undefined, strands]
        : [medium, ...(Array.isArray(carries) ? (carries as readonly Data[]) : [])];
  return words.filter(isWord).join(", ");
}

export const cableColumns: readonly ColumnOf<LaidCable>[] = [
  { name: "Label", of: ({ label }) => label },
  { name: "Kind", of: ({ kind }) => kind },
  { name: "Part", of: ({ name }) => name },
  { name: "Made of", of: madeOf },
  { name: "As written", of: ({ length }) => written(length) },
  { name: "Length", kind: "length", of: ({ length }) => length },
  { name: "Reach", kind: "length", of: ({ reach }) => reach },
  { name: "From", of: ({ from }) => from.place },
  { name: "From connector", of: ({ from }) => from.connector },
  { name: "To", of: ({ to }) => to.place },
  { name: "To connector", of: ({ to }) => to.connector },
];
