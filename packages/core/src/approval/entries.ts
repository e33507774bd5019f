import type { Data } from "../document/yaml/yaml.js";
import type { StandardFile } from "../standard/file.js";
import type { Approvable } from "./approvable.js";

type Group = Readonly<Record<string, Data>>;

const isGroup = (data: unknown): data is Group => typeof data === "object" && data !== null && !Array.isArray(data);

const NOTHING: readonly string[] = [];
const named = new WeakMap<object, readonly string[]>();

/** Every text and every key in data, whatever may be the name of something, each once; gone through once. */
function namesIn(data: Data): readonly string[] {
  if (typeof data === "string") return [data];
  if (typeof data !== "object" || data === null) return NOTHING;
  const known = named.get(data);
  if (known) return known;
  const names = new Set<string>();
  for (const [key, value] of Object.entries(data)) {
    if (!Array.isArray(data)) names.add(key);
    for (const name of namesIn(value as Data)) names.add(name);
  }
  const all = [...names];
  named.set(data, all);
  return all;
}

/** Adds what a document names, and what that names in turn. */
function addNamed(
  found: Map<string, Data>,
  data: Data,
  kind: string,
  entryOf: (name: string) => Data | undefined,
): void {
  for (const name of namesIn(data)) {
    const entry = entryOf(name);
    if (entry === undefined) continue;
    const key = `${kind} ${name}`;
    if (found.has(key)) continue;
    found.set(key, entry);
    addNamed(found, entry, kind, entryOf);
  }
}

/** Where files are, who may sign and what a plugin may take is no part of what a document is judged by. */
const NOT_JUDGED = [
  "documents",
  "parts",
  "stock",
  "surveys",
  "papers",
  "people",
  "plugin-limits",
  "in-force",
  "replaces",
];

const judged = new WeakMap<object, Data>();

/** Data without some of its keys; the same object for the same data. */
function without(data: Group, keys: readonly string[]): Data {
  const known = judged.get(data) ?? Object.fromEntries(Object.entries(data).filter(([key]) => !keys.includes(key)));
  judged.set(data, known);
  return known;
}

const judgedBy = ({ placed: { data } }: StandardFile): Data => (isGroup(data) ? without(data, NOT_JUDGED) : null);

/**
 * What a document rests on besides itself, by what it is called: the parts it names and those they name, the lots and
 * items of the holdings it names, the survey of its venue, the house standards in force. Anything that happens to be
 * called like a part counts with it: that
 * ends an approval too often, never too rarely.
 */
export function entriesOfContent({ reader, context }: Approvable): ReadonlyMap<string, Data> {
  const found = new Map<string, Data>();
  // What a part costs is no part of what is judged.
  const part = (name: string): Data | undefined => {
    const data = reader.parts.get(name)?.data;
    return data && without(data as Group, ["price"]);
  };
  const lot = (name: string): Data | undefined => context.stock.lots.get(name) as Data | undefined;
  const item = (name: string): Data | undefined => context.stock.items.get(name) as Data | undefined;
  addNamed(found, reader.placed.data, "lot", lot);
  for (const data of [reader.placed.data, ...found.values()]) addNamed(found, data, "part", part);
  for (const data of [reader.placed.data, ...found.values()]) addNamed(found, data, "item", item);
  // The whole of it: what it says of a wall may be why a face is not on it.
  if (reader.venue) found.set(`survey ${reader.venue.survey.name}`, reader.venue.survey.placed.data);
  for (const standard of context.standards)
    if (standard.file !== undefined) found.set(`house standard ${standard.file}`, judgedBy(standard));
  // What is laid over a document does not stand in its text, so its approval is not of it.
  if (reader.placed.laidOver) found.set("laid over", reader.placed.data);
  return found;
}
