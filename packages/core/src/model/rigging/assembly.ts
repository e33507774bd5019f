import { designFactor, leastOf, missing, sum, tabled, terminations, type Value } from "@plumbmark/calc";
import type { Data } from "../../document/yaml/yaml.js";
import type { Part } from "../../repository/parts.js";
import { type Named, partName, partValue, type Reader } from "../reading/reader.js";
import { asMass } from "./as-mass.js";

/** One part of a hang's assembly, in load order. */
export interface AssemblyPart {
  /** Its name in the catalogue. */
  readonly name: string;
  /** Its entry of the catalogue; undefined when there is none of that name. */
  readonly part: Part | undefined;
  /** Its place in the document. */
  readonly path: string;
  /** How a rope ends, and the clips on each eye: of this assembly, else of the part. */
  readonly termination: string | undefined;
  /** Clips the eye is made with; undefined when it is not written down. */
  readonly clips: number | undefined;
}

/** Something a load is held against, and what of that load counts there: the structure bears the hardware, too. */
export interface AssemblyRating {
  readonly what: string;
  readonly allowed: Value;
  readonly of: (carried: Value) => Value;
}

/** Names of the schema → rows of the table of terminations; of several kinds the one that keeps least. */
const KEEPS: Readonly<Record<string, keyof typeof terminations>> = {
  "poured-socket": "poured-socket",
  "swaged-socket": "swaged-socket",
  sleeve: "oval-sleeve",
  splice: "tucked-splice-stainless",
  "wedge-socket": "wedge-socket",
  clips: "clips",
};

const property = (entry: Data, part: Part | undefined, key: string): Data | undefined => {
  const own =
    entry !== null && typeof entry === "object" && !Array.isArray(entry)
      ? (entry as Record<string, Data>)[key]
      : undefined;
  return own ?? part?.data[key];
};

/** Parts in load order with what holds them together. */
export class Assembly {
  readonly parts: readonly AssemblyPart[];

  constructor(
    readonly reader: Reader,
    readonly path: string,
    readonly label: string,
  ) {
    this.parts = reader.list(path).map((entry, index) => {
      const name = partName(entry);
      const part = reader.parts.get(name);
      const [termination, clips] = [property(entry, part, "termination"), property(entry, part, "clips")];
      return {
        name,
        part,
        path: `${path}.${index + 1}`,
        termination: typeof termination === "string" ? termination : undefined,
        clips: typeof clips === "number" ? clips : undefined,
      };
    });
  }

  #named({ name, path }: AssemblyPart): Named {
    return { label: `${this.label}: ${name}`, path };
  }

  #least<const K extends "mass" | "factor">(kind: K, what: string, of: (part: AssemblyPart) => Value): Value<K> {
    if (this.parts.length === 0) return missing(kind, { path: this.path, what: "assembly", of: this.label });
    return leastOf(this.parts.map(of), kind, what);
  }

  /** The least WLL; missing when a part has none. */
  get weakest(): Value<"mass"> {
    return this.#least("mass", "WLL", (each) => asMass(partValue(each.part, "wll", "mass", "WLL", this.#named(each))));
  }

  /** What its parts weigh themselves; missing when the catalogue does not say it of one of them. */
  get mass(): Value<"mass"> {
    if (this.parts.length === 0) return missing("mass", { path: this.path, what: "assembly", of: this.label });
    return sum(
      this.parts.map((each) => partValue(each.part, "mass", "mass", "mass", this.#named(each))),
      "mass",
      "m",
    );
  }

  /** The least breaking strength ÷ load, the rope's reduced by its termination; missing when a part states no strength. */
  designFactor(load: Value): Value<"factor"> {
    return this.#least("factor", "D", (each) =>
      designFactor.of({
        B: asMass(partValue(each.part, "breaking", "mass", "breaking strength", this.#named(each))),
        η: this.#kept(each),
        W: load,
      }),
    );
  }

  #kept({ part, name, termination, path }: AssemblyPart): Value<"factor"> {
    if (part?.kind !== "rope") return tabled(1, "factor", "arithmetic", "no termination");
    const row = termination === undefined ? undefined : KEEPS[termination];
    if (row === undefined) return missing("factor", { path, what: "termination", of: `${this.label}: ${name}` });
    return tabled(terminations[row].share, "factor", terminations[row].source, termination as string);
  }
}
