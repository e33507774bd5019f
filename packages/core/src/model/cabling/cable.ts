import { type Kind, missing, type Value } from "@plumbmark/calc";
import type { Data } from "../../document/yaml/yaml.js";
import type { Part } from "../../repository/parts.js";
import { partOptional, partValue, type Reader } from "../reading/reader.js";

/** A connector of a part: its id in the table, and a better retention the part states with its reason. */
export interface End {
  /** Id of the connector in the table of connectors. */
  readonly id: string;
  /** A better retention its part states. */
  readonly retained?: string;
}

export function endOf(data: Data | undefined): End | undefined {
  if (typeof data === "string") return { id: data };
  if (data === null || typeof data !== "object" || Array.isArray(data)) return undefined;
  const { type, retained, because } = data as Record<string, string>;
  return typeof type === "string" ? { id: type, ...(retained && because ? { retained } : {}) } : undefined;
}

/** A feed or a jumper: a part and its length. */
export class Cable {
  /** Its entry of the catalogue; undefined when there is none of that name. */
  readonly part: Part | undefined;

  constructor(
    /** The front matter it is written in. */
    readonly reader: Reader,
    /** Its place in the document. */
    readonly path: string,
    /** What messages call it. */
    readonly label: string,
    kind: "power-cable" | "data-cable",
  ) {
    this.part = reader.part(`${path}.part`, [kind]);
  }

  /** The shortest of the lengths its part comes in that is at least so many metres, as it is written there. */
  stockedFrom(least: number): string | undefined {
    const lengths = this.part?.data.lengths;
    const known = (Array.isArray(lengths) ? lengths : []).flatMap((text, index) => {
      const length = this.part?.quantities.get(`lengths.${index + 1}`);
      return length?.known && (length.sure ?? "stated") === "stated"
        ? [{ text: String(text), metres: length.value }]
        : [];
    });
    return known.filter(({ metres }) => metres >= least).sort((one, other) => one.metres - other.metres)[0]?.text;
  }

  /** Whether anything is written of it. */
  get written(): boolean {
    return this.reader.data(this.path) !== undefined;
  }

  /** Its length, in metres. */
  get length(): Value<"length"> {
    return this.reader.value(`${this.path}.length`, "length", "length", this.label);
  }

  /** How long it may be by its maker, in metres; undefined when the part says nothing of it. */
  get longest(): Value<"length"> | undefined {
    return partOptional(this.part, "longest", "length", "longest length stated by the maker");
  }

  /** The cross-section of its conductors, in square millimetres. */
  get conductor(): Value<"conductor"> {
    return this.#of("conductor", "conductor", "conductor");
  }

  /** Its mass per length, in kilograms per metre. */
  get massPerLength(): Value<"mass-per-length"> {
    return this.#of("mass", "mass-per-length", "mass per length");
  }

  /** Connectors, source end first; undefined when the part does not state them. */
  get ends(): readonly [End | undefined, End | undefined] {
    const ends = this.part?.data.connectors as readonly Data[] | undefined;
    return [endOf(ends?.[0]), endOf(ends?.[1])];
  }

  #of<const K extends Kind>(path: string, kind: K, what: string): Value<K> {
    if (!this.written) return missing(kind, { path: `${this.path}.part`, what: "part", of: this.label });
    return partValue(this.part, path, kind, what, { label: this.label, path: `${this.path}.part` });
  }
}
