import type { Value } from "@plumbmark/calc";
import type { Design } from "../model/design.js";
import type { Part } from "../repository/parts.js";
import { NOT_STATED } from "./table.js";

/** An entry of the picture path with what is written about it. */
export interface PathEntry {
  readonly path: string;
  readonly name: string;
  readonly part: Part | undefined;
  readonly kind: string;
  readonly place: string | undefined;
  readonly length: Value<"length">;
}

/** Entries of the picture path in order; a part that is not in the catalogue and has a length is taken for a cable. */
export const stationsOf = ({ reader }: Design): readonly PathEntry[] =>
  reader.list("picture.path").map((_, index) => {
    const path = `picture.path.${index + 1}`;
    const name = reader.text(`${path}.part`) ?? NOT_STATED;
    const part = reader.parts.get(name);
    const length = reader.value(`${path}.length`, "length", "length", `The cable ${name}`);
    const kind = part?.kind ?? (length.known ? "video-cable" : NOT_STATED);
    return { path, name, part, kind, place: reader.text(`${path}.place`), length };
  });
