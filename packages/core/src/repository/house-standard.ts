import type { Mistake } from "../document/mistake.js";
import { validate } from "../document/validate.js";
import { type Data, type Placed, readYaml } from "../document/yaml.js";
import type { SourceFile } from "./files.js";

/** The house standard with the defaults of the product filled in. */
export interface HouseStandardSettings {
  readonly name: string;
  readonly practice: "us" | "iec";
  readonly documents: readonly string[];
  readonly parts: readonly string[];
  readonly stock?: string;
  readonly plugins: readonly string[];
  readonly sections: readonly string[];
  /** Level and settings by rule, as written. */
  readonly rules: Readonly<Record<string, Readonly<Record<string, Data>>>>;
  /** Rules without code, as written. */
  readonly "own-rules"?: Readonly<Record<string, Data>>;
}

const DEFAULTS: HouseStandardSettings = {
  name: "the defaults of Plumbmark",
  practice: "us",
  documents: ["builds/**/*.md"],
  parts: ["parts/*.yaml"],
  stock: "stock.yaml",
  plugins: [],
  sections: ["Scope", "Cautions", "Lift plan", "Power-up", "Sign-off"],
  rules: {},
};

/** Reads a house standard; without a file the defaults apply. */
export function readHouseStandard(file: SourceFile | undefined): {
  standard: HouseStandardSettings;
  mistakes: readonly Mistake[];
} {
  if (!file) return { standard: DEFAULTS, mistakes: [] };
  const placed: Placed = readYaml(file.text);
  const mistakes = [...placed.mistakes, ...(placed.mistakes.length > 0 ? [] : validate("houseStandard", placed))];
  if (mistakes.length > 0 || placed.data === null) return { standard: DEFAULTS, mistakes };
  const { "house-standard": name, ...rest } = placed.data as Record<string, Data>;
  return { standard: { ...DEFAULTS, ...(rest as Partial<HouseStandardSettings>), name: String(name) }, mistakes };
}
