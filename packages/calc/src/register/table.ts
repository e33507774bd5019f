import { type SourceId, sources } from "../sources/index.js";

/** A table of figures, or a single figure, that limits or results rest on. */
export interface RegisterTable {
  /** Unique, `topic.name`. */
  readonly id: string;
  readonly title: string;
  /** What the figures are, with their unit. */
  readonly holds: string;
  readonly sources: readonly SourceId[];
  /** The figures themselves; a row may name a source of its own. */
  readonly data: unknown;
}

const isSource = (text: string): text is SourceId => Object.hasOwn(sources, text);

/** Sources that rows name themselves, in a field whose name ends in `source`. */
function named(data: unknown, field = ""): readonly SourceId[] {
  if (typeof data === "string") return /source$/iu.test(field) && isSource(data) ? [data] : [];
  if (data instanceof Map) return named([...data.values()]);
  if (Array.isArray(data)) return data.flatMap((each) => named(each));
  if (typeof data === "object" && data !== null)
    return Object.entries(data).flatMap(([name, each]) => named(each, name));
  return [];
}

/** Tables do not change, and there are many rows to go through. */
const known = new WeakMap<RegisterTable, readonly SourceId[]>();

/** Every source a table rests on, its rows' own included, each once. */
export function sourcesOfTable(table: RegisterTable): readonly SourceId[] {
  const found = known.get(table) ?? [...new Set([...table.sources, ...named(table.data)])];
  known.set(table, found);
  return found;
}
