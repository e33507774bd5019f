import { type Data, readWholeYaml } from "@plumbmark/core";

type Mapping = Readonly<Record<string, Data>>;

const mapping = (data: Data | undefined): Mapping | undefined =>
  data !== null && typeof data === "object" && !Array.isArray(data) ? (data as Mapping) : undefined;

/** The days out and back among the entries of a stock list; no lot can be called so. */
const DAYS = "days out and back";

const STOCK = ["lots", "items", "days"];

/** Entries of a catalogue, or those of a stock list: its lots and items. */
function entries(text: string | undefined): Mapping | undefined {
  if (text === undefined) return {};
  const { data, mistakes } = readWholeYaml(text);
  const all = mapping(data);
  return mistakes.length > 0 || all === undefined ? undefined : (stockEntries(all) ?? all);
}

/** Lots and items of a stock list in one; undefined for a catalogue. */
function stockEntries(all: Mapping): Mapping | undefined {
  return Object.keys(all).some((key) => STOCK.includes(key))
    ? { ...mapping(all.lots), ...mapping(all.items), [DAYS]: all.days ?? null }
    : undefined;
}

/** Names of the entries that differ between two versions of a file; undefined when one of them cannot be read. */
export function changedEntries(before: string | undefined, after: string | undefined): readonly string[] | undefined {
  const [old, current] = [entries(before), entries(after)];
  if (old === undefined || current === undefined) return undefined;
  const names = new Set([...Object.keys(old), ...Object.keys(current)]);
  const changed = [...names].filter((name) => JSON.stringify(old[name]) !== JSON.stringify(current[name]));
  // Days on the way are added to those of every document.
  return changed.includes(DAYS) ? undefined : changed;
}
