import type { Mistake } from "../document/mistake.js";
import { readData } from "../document/read-data.js";
import { readWholeYaml } from "../document/yaml/whole-yaml.js";
import type { Data } from "../document/yaml/yaml.js";
import type { SourceFile } from "./files.js";

/** One purchase of panels. */
export interface Lot {
  /** Its name in the stock list. */
  readonly name: string;
  /** The part its panels are. */
  readonly panel: string;
  /** The maker's production batch; undefined when it is not written down. */
  readonly batch?: string;
  /** How many panels it has. */
  readonly count: number;
}

export interface Stock {
  readonly lots: ReadonlyMap<string, Lot>;
  readonly mistakes: readonly Mistake[];
}

export function readStock(file: SourceFile | undefined): Stock {
  if (!file) return { lots: new Map(), mistakes: [] };
  const placed = readWholeYaml(file.text);
  const { mistakes } = readData("stock", placed);
  const written = (placed.data as { readonly lots?: Record<string, Data> } | null)?.lots;
  const lots = written !== null && typeof written === "object" ? Object.entries(written) : [];
  // A slip in one lot does not take the others off the shelf.
  const sound = lots.filter(([name]) => !mistakes.some(({ path }) => `${path}.`.startsWith(`lots.${name}.`)));
  return { lots: new Map(sound.map(([name, lot]) => [name, { name, ...(lot as object) } as Lot])), mistakes };
}
