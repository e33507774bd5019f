import type { Mistake } from "../document/mistake.js";
import { validate } from "../document/validate.js";
import { readWholeYaml } from "../document/whole-yaml.js";
import type { Data } from "../document/yaml.js";
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
  const mistakes = [...placed.mistakes, ...(placed.mistakes.length > 0 ? [] : validate("stock", placed))];
  if (mistakes.length > 0) return { lots: new Map(), mistakes };
  const lots = (placed.data as { lots: Record<string, Data> }).lots;
  return {
    lots: new Map(Object.entries(lots).map(([name, lot]) => [name, { name, ...(lot as object) } as Lot])),
    mistakes,
  };
}
