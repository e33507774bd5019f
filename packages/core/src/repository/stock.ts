import type { Mistake } from "../document/mistake.js";
import { START } from "../document/place.js";
import { readData } from "../document/read-data.js";
import { readWholeYaml } from "../document/yaml/whole-yaml.js";
import type { Data, Placed } from "../document/yaml/yaml.js";
import type { SourceFile } from "./files.js";
import { type Item, itemMistakes, itemOf } from "./items.js";

/** One purchase of panels. */
export interface Lot {
  /** Its name in the stock list. */
  readonly name: string;
  /** The part its panels are. */
  readonly panel: string;
  /** The maker's production batch; undefined when it is not written down. */
  readonly batch?: string;
  /** How many panels it has, faulty ones among them. */
  readonly count: number;
  /** How many of them are faulty. */
  readonly faulty?: number;
}

/** Panels of a lot that can be promised: those that are not faulty. */
export const soundIn = ({ count, faulty = 0 }: Pick<Lot, "count" | "faulty">): number => Math.max(0, count - faulty);

/** Days everything is away besides those on site. */
export interface DaysAway {
  readonly out: number;
  readonly back: number;
}

/** Everything that is owned. */
export interface Stock {
  readonly lots: ReadonlyMap<string, Lot>;
  /** What there is besides lots, by the name of its part. */
  readonly items: ReadonlyMap<string, Item>;
  readonly days: DaysAway;
  readonly mistakes: readonly Mistake[];
}

type Mapping = Readonly<Record<string, Data>>;

const mapping = (data: Data | undefined): Mapping =>
  data !== null && typeof data === "object" && !Array.isArray(data) ? (data as Mapping) : {};

const dayCount = (data: Data | undefined): number => (typeof data === "number" && Number.isInteger(data) ? data : 0);

function lotMistakes(placed: Placed, lots: Mapping): readonly Mistake[] {
  return Object.entries(lots).flatMap(([name, data]) => {
    const { count, faulty } = mapping(data);
    if (typeof count !== "number" || typeof faulty !== "number" || faulty <= count) return [];
    const path = `lots.${name}.faulty`;
    const place = placed.places.get(path) ?? START;
    const says = `The lot \`${name}\` has ${count} panels, and ${faulty} of them are said to be faulty.`;
    return [{ rule: "document.front-matter" as const, path, place, says, mend: `Write at most ${count}.` }];
  });
}

const NOTHING: Stock = { lots: new Map(), items: new Map(), days: { out: 0, back: 0 }, mistakes: [] };

/** Reads the holdings. */
export function readStock(file: SourceFile | undefined): Stock {
  if (!file) return NOTHING;
  const placed = readWholeYaml(file.text);
  const { mistakes: read } = readData("stock", placed);
  const written = mapping(placed.data);
  const [lots, items] = [mapping(written.lots), mapping(written.items)];
  const told = new Set(read.map(({ path }) => path));
  const own = [...lotMistakes(placed, lots), ...itemMistakes(placed, items)].filter(({ path }) => !told.has(path));
  const mistakes = [...read, ...own];
  // A slip in one entry does not take the others off the shelf.
  const sound = (group: string, all: Mapping): readonly (readonly [string, Data])[] =>
    Object.entries(all).filter(([name]) => !mistakes.some(({ path }) => `${path}.`.startsWith(`${group}.${name}.`)));
  const { out, back } = mapping(written.days);
  return {
    lots: new Map(sound("lots", lots).map(([name, lot]) => [name, { name, ...(lot as object) } as Lot])),
    items: new Map(sound("items", items).map(([name, item]) => [name, itemOf(name, mapping(item))])),
    days: { out: dayCount(out), back: dayCount(back) },
    mistakes,
  };
}
