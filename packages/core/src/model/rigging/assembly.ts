import {
  designFactor,
  type Kind,
  leastCoefficients,
  leastOf,
  missing,
  ratedLoad,
  type SlingMaterial,
  type SlingMode,
  slingModeFactor,
  sum,
  tabled,
  terminations,
  times,
  type Value,
} from "@plumbmark/calc";
import type { Data } from "../../document/yaml/yaml.js";
import type { Part } from "../../repository/parts.js";
import { asMass } from "../reading/as-mass.js";
import { type Marking, markingOf } from "../reading/marking.js";
import { type Named, partName, partOptional, partValue, type Reader } from "../reading/reader.js";
import { assembledLength } from "./reach.js";

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
  /** How it is put round the load or the structure, if it is a sling or rope: straight where nothing is written. */
  readonly mode: SlingMode;
  /** Whether a way of slinging is written for what is no rope and no sling. */
  readonly misused: boolean;
}

/** Something a load is held against, and what of that load counts there: the structure bears the hardware, too. */
export interface AssemblyRating {
  readonly what: string;
  readonly allowed: Value;
  readonly of: (carried: Value) => Value;
}

/** The least and the greatest a part is made for. */
export type FitRange = readonly [least: Value<"length">, greatest: Value<"length">];

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

/** What a sling is made of; undefined of what is none, or does not say. */
function materialOf(part: Part | undefined): SlingMaterial | undefined {
  if (part?.kind === "rope") return "wire-rope";
  const sling = part?.data.sling;
  if (sling === "wire-rope" || sling === "chain" || sling === "textile") return sling;
  return part?.data.textile === true ? "textile" : undefined;
}

/** The parts an assembly of the catalogue is made of; none of anything else. */
export const partsOfAssembly = (part: Part | undefined): readonly Data[] =>
  part?.kind === "assembly" && Array.isArray(part.data.of) ? (part.data.of as readonly Data[]) : [];

/** Entries in load order, each with its place: one by one, or those of an assembly of the catalogue that is named. */
function entriesOf(reader: Reader, path: string): readonly (readonly [entry: Data, at: string])[] {
  const named = reader.text(path);
  if (named !== undefined)
    return partsOfAssembly(reader.parts.get(named)).map((entry, index) => [entry, `${path}.${index + 1}`]);
  return reader.list(path).map((entry, index) => [entry, `${path}.${index + 1}`]);
}

/** Parts in load order with what holds them together. */
export class Assembly {
  readonly parts: readonly AssemblyPart[];

  constructor(
    readonly reader: Reader,
    readonly path: string,
    readonly label: string,
    readonly practice: "us" | "iec",
  ) {
    this.parts = entriesOf(reader, path).map(([entry, at]) => {
      const name = partName(entry);
      const part = reader.parts.get(name);
      const [termination, clips] = [property(entry, part, "termination"), property(entry, part, "clips")];
      const mode = property(entry, undefined, "mode");
      return {
        name,
        part,
        path: at,
        termination: typeof termination === "string" ? termination : undefined,
        clips: typeof clips === "number" ? clips : undefined,
        mode: mode === "choke" || mode === "basket" ? mode : "straight",
        misused: (mode === "choke" || mode === "basket") && part !== undefined && materialOf(part) === undefined,
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

  /** The least WLL, of a sling as it is used; missing when a part has none. */
  get weakest(): Value<"mass"> {
    return this.#least("mass", "WLL", (each) => this.#asUsed(each, asMass(this.valueOf(each, "wll", "mass", "WLL"))));
  }

  /** A figure of one of its parts. */
  valueOf<const K extends Kind>(each: AssemblyPart, path: string, kind: K, what: string): Value<K> {
    return partValue(each.part, path, kind, what, this.#named(each));
  }

  /** What is left of a sling's strength when it is choked, or doubled in a basket. */
  #asUsed({ mode, part }: AssemblyPart, rating: Value<"mass">): Value<"mass"> {
    if (mode === "straight") return rating;
    const { share } = slingModeFactor(mode, materialOf(part), this.practice);
    return times(rating, share, `${share} (${mode})`);
  }

  /** The WLL marked on one of its parts. */
  markedWll(each: AssemblyPart): Value<"mass"> {
    return asMass(this.valueOf(each, "wll", "mass", "WLL"));
  }

  /** What one of its parts breaks at by its maker, before any termination or mode. */
  statedStrength(each: AssemblyPart): Value<"mass"> {
    return asMass(this.valueOf(each, "breaking", "mass", "breaking strength"));
  }

  /** What one of its parts may carry when it is pulled at an angle, where its maker states a load. */
  angularWll(each: AssemblyPart): Value<"mass"> {
    return asMass(this.valueOf(each, "angular-wll", "mass", "WLL when pulled at an angle"));
  }

  /** Thinnest and thickest pipe one of its parts takes hold of; undefined where its maker says nothing of pipes. */
  fitsPipe(each: AssemblyPart): FitRange | undefined {
    return this.#range(each, "fits", "diameter of pipe it fits");
  }

  /** Narrowest and widest flange one of its parts takes hold of; undefined where its maker says nothing of flanges. */
  fitsFlange(each: AssemblyPart): FitRange | undefined {
    return each.part?.data.flange === "none" ? undefined : this.#range(each, "flange", "width of flange it fits");
  }

  #range(each: AssemblyPart, key: string, what: string): FitRange | undefined {
    if (each.part?.data[key] === undefined) return undefined;
    const one = partOptional(each.part, key, "length", what);
    if (one?.known) return [one, one];
    return [this.valueOf(each, `${key}.1`, "length", what), this.valueOf(each, `${key}.2`, "length", what)];
  }

  /** What is stamped on one of its parts, or written on its tag; undefined where nothing is. */
  markingOf({ part }: AssemblyPart): Marking | undefined {
    return markingOf(part?.data.marking, this.practice);
  }

  /** Whether one of its parts is a rope, or a sling of wire rope, chain or textile. */
  isSling({ part }: AssemblyPart): boolean {
    return materialOf(part) !== undefined;
  }

  /** What one of its parts breaks at, as it is used: a rope's with its termination. */
  strengthOf(each: AssemblyPart): Value<"mass"> {
    return ratedLoad.of({
      B: this.#asUsed(each, asMass(this.valueOf(each, "breaking", "mass", "breaking strength"))),
      η: this.#kept(each),
      D: tabled(1, "factor", "arithmetic", "at breaking"),
    });
  }

  /** Shortest and longest it can be made. */
  get length(): readonly [Value<"length">, Value<"length">] {
    return assembledLength(this);
  }

  /** The WLL its breaking strength bears out: breaking strength × termination ÷ the least factor for such a part. */
  borneOut(each: AssemblyPart): Value<"mass"> {
    const { source, [this.practice]: factor } = leastCoefficients[materialOf(each.part) ?? "hardware"];
    return ratedLoad.of({
      B: asMass(this.valueOf(each, "breaking", "mass", "breaking strength")),
      η: this.#kept(each),
      D: tabled(factor, "factor", source, "least factor of breaking strength over WLL"),
    });
  }

  /** Whether that least factor is from print; one from memory condemns no part. */
  borneOutByPrint(each: AssemblyPart): boolean {
    return leastCoefficients[materialOf(each.part) ?? "hardware"].fromMemory !== this.practice;
  }

  /** What its parts weigh themselves; missing when the catalogue does not say it of one of them. */
  get mass(): Value<"mass"> {
    if (this.parts.length === 0) return missing("mass", { path: this.path, what: "assembly", of: this.label });
    return sum(
      this.parts.map((each) => this.valueOf(each, "mass", "mass", "mass")),
      "mass",
      "m",
    );
  }

  /** The least breaking strength ÷ load, the rope's reduced by its termination; missing when a part states no strength. */
  designFactor(load: Value): Value<"factor"> {
    return this.#least("factor", "D", (each) =>
      designFactor.of({
        B: this.#asUsed(each, asMass(this.valueOf(each, "breaking", "mass", "breaking strength"))),
        η: this.#kept(each),
        W: load,
      }),
    );
  }

  #kept({ part, name, termination, path }: AssemblyPart): Value<"factor"> {
    if (part?.kind !== "rope") return tabled(1, "factor", "arithmetic", "no termination");
    const row = termination === undefined ? undefined : KEEPS[termination];
    if (row === undefined)
      return missing("factor", { path: `${path}.termination`, what: "termination", of: `${this.label}: ${name}` });
    return tabled(terminations[row].share, "factor", terminations[row].source, termination as string);
  }
}
