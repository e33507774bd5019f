import { type Place, placer } from "../place.js";
import type { FrontMatter } from "./front-matter.js";
import { ENTRY, WITHIN } from "./top-level.js";
import { type Data, LARGEST_YAML, type Placed, readYaml } from "./yaml.js";

// The parser takes most of the time from a keystroke to what is read, and a keystroke changes one entry of fifteen.

/** An entry at the left margin, with the lines that belong to it, read by itself. */
interface Entry {
  readonly text: string;
  /** The line of the file it begins in. */
  readonly line: number;
  readonly placed: Placed;
}

/** What front matter that was read by its entries was put together from. */
const entriesOf = new WeakMap<Placed, readonly Entry[]>();

/** Offsets at which entries begin; undefined where lines do not tell what belongs to which. */
function startsIn(yaml: string): readonly number[] | undefined {
  const starts: number[] = [];
  const seen = new Set<string>();
  for (const { index, 0: line } of yaml.matchAll(/[^\r\n]+/gu)) {
    const key = ENTRY.exec(line)?.[1];
    if (key === undefined ? !WITHIN.test(line) || starts.length === 0 : seen.has(key)) return undefined;
    if (key === undefined) continue;
    seen.add(key);
    starts.push(index);
  }
  return starts.length > 0 ? starts : undefined;
}

const movedBy = (lines: number, { line, column, endLine, endColumn }: Place): Place => ({
  line: line + lines,
  column,
  endLine: endLine + lines,
  endColumn,
});

/** The same entry where it stands now. */
function moved(entry: Entry, line: number): Entry {
  const lines = line - entry.line;
  if (lines === 0) return entry;
  const places = (of: Placed["places"]) => new Map([...of].map(([path, place]) => [path, movedBy(lines, place)]));
  const { placed } = entry;
  return { ...entry, line, placed: { ...placed, places: places(placed.places), keys: places(placed.keys) } };
}

/** The front matter its entries make up; each of them is a group of one key. */
function together(entries: readonly Entry[]): Placed {
  const data = Object.create(null) as Record<string, Data>;
  const [places, keys] = [new Map<string, Place>(), new Map<string, Place>()];
  const [first, last] = [entries[0], entries.at(-1)].map((entry) => entry?.placed.places.get("") as Place);
  const { endLine, endColumn } = last as Place;
  places.set("", { ...(first as Place), endLine, endColumn });
  for (const { placed } of entries) {
    Object.assign(data, placed.data);
    for (const [path, place] of placed.places) if (path !== "") places.set(path, place);
    for (const [path, place] of placed.keys) keys.set(path, place);
  }
  const placed: Placed = { data, places, keys, mistakes: [] };
  entriesOf.set(placed, entries);
  return placed;
}

/**
 * Undefined where an entry cannot be read by itself, or something is wrong with it: what, is told of the whole. What
 * stands for something in another entry, an alias or a merge key, is a mistake anyway.
 */
function entriesIn(text: string, { from, to }: FrontMatter, known: readonly Entry[]): readonly Entry[] | undefined {
  const yaml = text.slice(from, to);
  const starts = to - from > LARGEST_YAML ? undefined : startsIn(yaml);
  if (!starts) return undefined;
  const at = placer(text);
  const before = new Map(known.map((entry) => [entry.text, entry]));
  const entries: Entry[] = [];
  for (const [index, start] of starts.entries()) {
    const end = starts[index + 1] ?? yaml.length;
    const own = yaml.slice(start, end);
    const { line } = at(from + start, from + start);
    const entry = before.get(own);
    const placed = entry ? moved(entry, line).placed : readYaml(text, from + start, from + end, at);
    if (placed.mistakes.length > 0 || placed.data === null) return undefined;
    entries.push({ text: own, line, placed });
  }
  return entries;
}

/**
 * Front matter that is being written: entries whose text is what it was are not read again, and their data are the same
 * objects. Comes to what `readYaml` does.
 */
export function readByEntries(text: string, where: FrontMatter, before: Placed | undefined): Placed {
  const entries = entriesIn(text, where, (before && entriesOf.get(before)) ?? []);
  return entries ? together(entries) : readYaml(text, where.from, where.to);
}
