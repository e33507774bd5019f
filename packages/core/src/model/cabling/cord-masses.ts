import type { Known } from "@plumbmark/calc";
import { cordInterval } from "../../repository/assumed.js";
import { partsUsed } from "../reading/parts-used.js";
import type { Reader } from "../reading/reader.js";

/** The mass per length that a part of the document states, and the interval its table gives for such a cord. */
export interface CordMass {
  /** Name of the part. */
  readonly name: string;
  /** The first place in the document that names it. */
  readonly path: string;
  /** The catalogue's file it is in. */
  readonly file: string;
  readonly stated: Known<"mass-per-length">;
  readonly least: Known<"mass-per-length">;
  readonly most: Known<"mass-per-length">;
}

/** Cords the document names whose part states a mass per length that a table can be held against. */
export const cordMasses = (reader: Reader): readonly CordMass[] =>
  partsUsed(reader).flatMap(({ part, path }) => {
    const stated = part.quantities.get("mass");
    const interval = part.data.mass === undefined ? undefined : cordInterval(part);
    if (stated?.kind !== "mass-per-length" || !interval) return [];
    const [least, most] = interval;
    return [{ name: part.name, path, file: part.file, stated: stated as Known<"mass-per-length">, least, most }];
  });
