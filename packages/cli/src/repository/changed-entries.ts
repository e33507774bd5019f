import { type Data, readWholeYaml } from "@plumbmark/core";

type Mapping = Readonly<Record<string, Data>>;

const mapping = (data: Data | undefined): Mapping | undefined =>
  data !== null && typeof data === "object" && !Array.isArray(data) ? (data as Mapping) : undefined;

/** Entries of a catalogue, or those of a stock list under `lots`. */
function entries(text: string | undefined): Mapping | undefined {
  if (text === undefined) return {};
  const { data, mistakes } = readWholeYaml(text);
  const all = mapping(data);
  return mistakes.length > 0 || all === undefined ? undefined : (mapping(all.lots) ?? all);
}

/** Names of the entries that differ between two versions of a file; undefined when one of them cannot be read. */
export function changedEntries(before: string | undefined, after: string | undefined): readonly string[] | undefined {
  const [old, current] = [entries(before), entries(after)];
  if (old === undefined || current === undefined) return undefined;
  const names = new Set([...Object.keys(old), ...Object.keys(current)]);
  return [...names].filter((name) => JSON.stringify(old[name]) !== JSON.stringify(current[name]));
}
