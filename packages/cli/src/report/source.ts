import { type Source, sources } from "@plumbmark/calc";

const BASIS = {
  published: "",
  memory: " (from memory)",
  practice: " (common practice, no source)",
  definition: "",
} as const;

type Shown = Partial<Source> & Pick<Source, "document">;

/** `NFPA 70 (NEC), 210.20(A): overcurrent device at least 125 % of the continuous load …` */
export function showSource({
  document,
  clause,
  says,
  basis,
}: Omit<Shown, "basis"> & { readonly basis?: string }): string {
  const where = clause ? `${document}, ${clause}` : document;
  const known = basis !== undefined && basis in BASIS ? BASIS[basis as keyof typeof BASIS] : "";
  return `${says ? `${where}: ${says}` : where}${known}`;
}

/** A source by its id; an id of a plugin's own is shown as it is. */
export function showSourceById(id: string): string {
  const found = (sources as Readonly<Record<string, Source>>)[id];
  return found ? showSource(found) : id;
}
