import { type Source, sources } from "@plumbmark/calc";

/** What a reader has to know about a source that was not seen in print. */
const BASIS: Readonly<Record<string, string>> = { memory: "from memory", practice: "common practice, no source" };

export interface ShownSource {
  readonly document: string;
  readonly clause?: string;
  readonly says?: string;
  readonly basis?: string;
}

/** `NFPA 70 (NEC), 210.20(A): overcurrent device at least 125 % of the continuous load …` */
export function showSource({ document, clause, says, basis }: ShownSource): string {
  const where = clause ? `${document}, ${clause}` : document;
  const text = !says ? where : says.startsWith(where) ? says : `${where}: ${says}`;
  const known = BASIS[basis ?? ""];
  return known === undefined || text.includes(known) ? text : `${text} (${known})`;
}

/** A source by its id; an id of a plugin's own is shown as it is. */
export function showSourceById(id: string): string {
  const found = (sources as Readonly<Record<string, Source>>)[id];
  return found ? showSource(found) : id;
}
