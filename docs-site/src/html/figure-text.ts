import { type Kind, kinds, printNumber, printQuantity, type System } from "@plumbmark/calc";
import type { CheckEntry, QuantityEntry, RangeEntry } from "@plumbmark/core";

const kindOf = new Map(Object.entries(kinds).map(([kind, { si }]) => [si as string, kind as Kind]));

/** A quantity of the record in the units of the document; a unit we do not know is printed as it stands. */
export function quantityText(entry: QuantityEntry, system: System): string {
  const kind = kindOf.get(entry.unit);
  return kind ? printQuantity(entry.value, kind, system) : `${entry.value} ${entry.unit}`;
}

/** A limit with its sense: `at most 16 A`, `within 2.1 m to 3 m`. */
export const allowedText = (entry: QuantityEntry | RangeEntry, system: System): string =>
  entry.sense === "within"
    ? `within ${quantityText({ value: entry.least, unit: entry.unit }, system)} to ${quantityText({ value: entry.most, unit: entry.unit }, system)}`
    : `${entry.sense ?? "at most"} ${quantityText(entry, system)}`;

/** A source by its name alone: document and clause. */
export const sourceName = ({ document, clause }: Pick<SourceEntry, "document" | "clause">): string =>
  clause === undefined ? document : `${document}, ${clause}`;

/** What is left to the limit: `12 % in hand`, `8 % over`. */
export function marginText(share: number): string {
  const left = (1 - share) * 100;
  return left >= 0 ? `${printNumber(left, 2)} % in hand` : `${printNumber(-left, 2)} % over`;
}

type SourceEntry = CheckEntry["sources"][number];

const BASIS: Readonly<Record<string, string>> = {
  memory: "from memory: look it up before relying on it",
  practice: "common practice",
};

/** A source in one line: document, edition, clause and what it says. */
export const sourceText = ({ document, title, edition, clause, says, basis }: Omit<SourceEntry, "id">): string => {
  const name = [document, title, edition, clause].filter((each) => each !== undefined).join(", ");
  const text = !says ? name : says.startsWith(name) ? says : `${name}: ${says}`;
  const known = basis === undefined ? undefined : BASIS[basis];
  return known && !text.includes(known) ? `${text} (${known})` : text;
};
