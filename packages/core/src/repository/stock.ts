import { asMeant } from "../document/edited.js";
import type { Mistake } from "../document/mistake.js";
import { START } from "../document/place.js";
import { readData } from "../document/read-data.js";
import { readWholeYaml } from "../document/yaml/whole-yaml.js";
import { type Data, join, type Placed } from "../document/yaml/yaml.js";
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
  /** What is wrong with them, by the path of the file. */
  readonly mistakes: ReadonlyMap<string, readonly Mistake[]>;
  /** They as they were most likely meant, for telling what waits for their mistakes. */
  readonly meant: () => Stock;
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

/** One file of the holdings by itself. */
interface StockFile extends Omit<Stock, "mistakes" | "meant"> {
  readonly placed: Placed;
  readonly mistakes: readonly Mistake[];
}

const meantFile = ({ path, text }: SourceFile): SourceFile => ({
  path,
  text: asMeant(text, (each) => readStockFile({ path, text: each }).mistakes),
});

function readStockFile({ text }: SourceFile): StockFile {
  const placed = readWholeYaml(text);
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
    placed,
    lots: new Map(sound("lots", lots).map(([name, lot]) => [name, { name, ...(lot as object) } as Lot])),
    items: new Map(sound("items", items).map(([name, item]) => [name, itemOf(name, mapping(item))])),
    days: { out: dayCount(out), back: dayCount(back) },
    mistakes,
  };
}

/** What one file may say once for all of them: each lot, each item, the days out and back. */
const saidIn = ({ placed: { data } }: StockFile): readonly (readonly [path: string, is: string])[] => {
  const { lots, items, days } = mapping(data);
  return [
    ...Object.keys(mapping(lots)).map((name) => [join("lots", name), `The lot \`${name}\` is`] as const),
    ...Object.keys(mapping(items)).map((name) => [join("items", name), `The item \`${name}\` is`] as const),
    ...(days === undefined ? [] : [["days", "The days out and back are"] as const]),
  ];
};

/**
 * Reads the holdings, all files together. What stands in two of them is a mistake of the later one, and counts as the
 * earlier one has it.
 */
export function readStock(files: readonly SourceFile[]): Stock {
  const [lots, items] = [new Map<string, Lot>(), new Map<string, Item>()];
  const mistakes = new Map<string, readonly Mistake[]>();
  const said = new Map<string, string>();
  let days: DaysAway = { out: 0, back: 0 };
  for (const file of files) {
    const read = readStockFile(file);
    const found = [...read.mistakes];
    const twice = new Set<string>();
    for (const [path, is] of saidIn(read)) {
      const place = read.placed.keys.get(path) ?? START;
      const earlier = said.get(path);
      if (earlier === undefined) said.set(path, `${file.path}:${place.line}:${place.column}`);
      else {
        twice.add(path);
        found.push({
          rule: "document.parts",
          path,
          place,
          says: `${is} also in ${earlier}.`,
          mend: "Keep one of them.",
        });
      }
    }
    for (const [name, lot] of read.lots) if (!twice.has(join("lots", name))) lots.set(name, lot);
    for (const [name, item] of read.items) if (!twice.has(join("items", name))) items.set(name, item);
    if (said.has("days") && !twice.has("days") && mapping(read.placed.data).days !== undefined) days = read.days;
    if (found.length > 0) mistakes.set(file.path, found);
  }
  return { lots, items, days, mistakes, meant: () => readStock(files.map(meantFile)) };
}

/**
 * What the holdings say, however they are divided into files: two repositories share them where it is the same.
 * One file is taken as it is written.
 */
export function writtenStock(files: readonly SourceFile[]): Data {
  const [first = null, ...more] = files.map(({ text }) => readWholeYaml(text).data);
  if (more.length === 0) return first;
  const all = [first, ...more].map(mapping);
  const merged = (key: "lots" | "items" | "days"): readonly (readonly [string, Data])[] => {
    const entries = new Map(all.toReversed().flatMap((each) => Object.entries(mapping(each[key]))));
    return entries.size === 0 ? [] : [[key, Object.fromEntries([...entries].sort(([a], [b]) => (a < b ? -1 : 1)))]];
  };
  return Object.fromEntries([...merged("lots"), ...merged("items"), ...merged("days")]);
}
