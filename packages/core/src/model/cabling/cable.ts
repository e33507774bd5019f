import { type Kind, missing, readQuantity, type Step, tabled, type Value } from "@plumbmark/calc";
import type { Data } from "../../document/yaml/yaml.js";
import type { ItemLength } from "../../repository/items.js";
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
    /** What it has to reach, where that is known: its length may then be left out. */
    readonly reach: () => Value<"length"> | undefined = () => undefined,
    /** The lengths of it that are owned; undefined where the holdings do not list it by length. */
    readonly owned: () => readonly ItemLength[] | undefined = () => undefined,
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
    return this.reader.has(this.path);
  }

  /** Its length, in metres: as written, else the shortest its part comes in that reaches. */
  get length(): Value<"length"> {
    const isLeftOut = this.written && !this.reader.has(`${this.path}.length`);
    const found = isLeftOut ? this.shortest : undefined;
    if (found?.known) return found;
    return this.reader.value(`${this.path}.length`, "length", "length", this.label);
  }

  /** The lengths there are: those the holdings list, else those its part comes in. */
  get #lengths(): readonly { readonly text: string; readonly metres: number }[] {
    const owned = this.owned()?.filter(({ count }) => count > 0);
    if (owned) return owned.map(({ text, length }) => ({ text, metres: length }));
    const lengths = this.part?.data.lengths;
    return (Array.isArray(lengths) ? lengths : []).flatMap((text, index) => {
      const length = this.part?.quantities.get(`lengths.${index + 1}`);
      return length && (length.sure ?? "stated") === "stated" ? [{ text: String(text), metres: length.value }] : [];
    });
  }

  /** The longest there is; undefined when nothing says which lengths there are. */
  get longestStocked(): Value<"length"> | undefined {
    const [longest] = [...this.#lengths].sort((one, other) => other.metres - one.metres);
    return longest && tabled(longest.metres, "length", "part", "longest length it comes in");
  }

  /** The shortest of the lengths its part comes in that reaches as far as it has to; undefined where nothing says how far. */
  get shortest(): Value<"length"> | undefined {
    const needed = this.reach();
    if (!needed?.known) return needed;
    const [shortest] = this.#lengths
      .filter(({ metres }) => metres >= needed.value - 1e-9)
      .sort((one, other) => one.metres - other.metres);
    const read = shortest && readQuantity(shortest.text, ["length"]);
    if (!read?.ok)
      return missing("length", {
        path: `${this.path}.length`,
        what: "length",
        because: `${this.label}: none of the lengths its part comes in reaches.`,
      });
    const { value, unit } = read.quantity;
    const step: Step = {
      formula: "shortest length of the part that reaches",
      show: (print) => `${this.#lengths.map(({ text }) => text).join(", ")}; at least ${print(needed.value, "length")}`,
      source: "arithmetic",
      inputs: [needed],
    };
    return { known: true, value, kind: "length", unit, origin: { from: "step", step } };
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
