import type { Mistake } from "../document/mistake.js";
import { validate } from "../document/validate.js";
import { readWholeYaml } from "../document/yaml/whole-yaml.js";
import type { Data, Placed } from "../document/yaml/yaml.js";
import type { SourceFile } from "./files.js";
import { renewed, twiceNamed } from "./old-keys.js";
import { pathMistakes } from "./paths.js";

/** What somebody may do with a document. */
export type Act = "prepare" | "approve" | "waive";

/** The house standard with the defaults of the product filled in. */
export interface HouseStandardSettings {
  /** Name and edition, as they are shown. */
  readonly name: string;
  readonly edition?: string;
  /** First day the edition is in force, `2027-01-01`. */
  readonly "in-force"?: string;
  /** File of the edition before this one. */
  readonly replaces?: string;
  readonly practice: "us" | "iec";
  readonly documents: readonly string[];
  readonly parts: readonly string[];
  /** Path or pattern of the holdings, or several. */
  readonly stock?: string | readonly string[];
  /** Where the surveys of venues are. */
  readonly surveys: readonly string[];
  /** Where wishes are, from which builds are drafted. */
  readonly wishes: readonly string[];
  /** Where letters and other papers are that documents refer to. */
  readonly papers: readonly string[];
  /** Modules rules are brought from. */
  readonly "rules-from": readonly string[];
  /** What a plugin may take; as written. */
  readonly "plugin-limits"?: { readonly time?: string; readonly memory?: string };
  readonly sections: readonly string[];
  /** Who may prepare, approve and waive, as written; anybody who is named where it is left out. */
  readonly people?: Readonly<Record<string, readonly Act[]>>;
  /** Rules and topics that a house standard deeper in the tree may loosen. */
  readonly allows: readonly string[];
  /** Level by topic, as written. */
  readonly topics: Readonly<Record<string, Readonly<Record<string, Data>>>>;
  /** Level and settings by rule, as written. */
  readonly requirements: Readonly<Record<string, Readonly<Record<string, Data>>>>;
  /** Rules without code, as written. */
  readonly "own-rules"?: Readonly<Record<string, Data>>;
}

const DEFAULTS: HouseStandardSettings = {
  name: "the defaults of Plumbmark",
  practice: "us",
  documents: ["**/builds/**/*.md"],
  parts: ["parts/*.yaml"],
  stock: "stock.yaml",
  surveys: ["venues/**/*.md"],
  wishes: ["wishes/**/*.yaml"],
  papers: ["letters/**", "**/letters/**"],
  "rules-from": [],
  sections: ["Scope", "Cautions", "Lift plan", "Power-up", "Sign-off"],
  allows: [],
  topics: {},
  requirements: {},
};

const NOTHING: Placed = { data: null, places: new Map(), keys: new Map(), mistakes: [] };

/** Name and edition in one: `Tallow & Finch AV, 2027 edition`. */
const shownName = (name: Data | undefined, edition: Data | undefined): string =>
  edition === undefined ? String(name) : `${String(name)}, ${String(edition)} edition`;

/** Reads a house standard; without a file the defaults apply. */
export function readHouseStandard(file: SourceFile | undefined): {
  standard: HouseStandardSettings;
  mistakes: readonly Mistake[];
  placed: Placed;
} {
  if (!file) return { standard: DEFAULTS, mistakes: [], placed: NOTHING };
  const placed: Placed = readWholeYaml(file.text);
  const mistakes = [...placed.mistakes, ...(placed.mistakes.length > 0 ? [] : validate("houseStandard", placed))];
  if (mistakes.length === 0 && placed.data !== null) mistakes.push(...pathMistakes(placed), ...twiceNamed(placed));
  if (mistakes.length > 0 || placed.data === null) return { standard: DEFAULTS, mistakes, placed };
  const { "house-standard": name, edition, ...rest } = renewed(placed.data as Record<string, Data>);
  const shown = { name: shownName(name, edition), ...(edition === undefined ? {} : { edition: String(edition) }) };
  return { standard: { ...DEFAULTS, ...(rest as Partial<HouseStandardSettings>), ...shown }, mistakes, placed };
}
