import type { Mistake } from "../document/mistake.js";
import { validate } from "../document/validate.js";
import { type Data, readYaml } from "../document/yaml.js";
import type { SourceFile } from "./files.js";

/** One purchase of panels. */
export interface Lot {
  readonly name: string;
  readonly panel: string;
  readonly batch?: string;
  readonly count: number;
}

export interface Stock {
  readonly lots: ReadonlyMap<string, Lot>;
  readonly mistakes: readonly Mistake[];
}

export function readStock(file: SourceFile | undefined): Stock {
  if (!file) return { lots: new Map(), mistakes: [] };
  const placed = readYaml(file.text);
  const mistakes = [...placed.mistakes, ...(placed.mistakes.length > 0 ? [] : validate("stock", placed))];
  if (mistakes.length > 0) return { lots: new Map(), mistakes };
  const lots = (placed.data as { lots: Record<string, Data> }).lots;
  return {
    lots: new Map(Object.entries(lots).map(([name, lot]) => [name, { name, ...(lot as object) } as Lot])),
    mistakes,
  };
}
