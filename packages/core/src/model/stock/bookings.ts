import { isDay } from "../../document/days.js";
import type { Data } from "../../document/yaml/yaml.js";
import { cellName, readCells } from "../faces/cells.js";

/** First and last day on site; without `to` the build stays. */
export interface Stay {
  readonly from: string;
  readonly to?: string;
}

/** Panels a face takes out of a lot; what is not written down is undefined, not nought. */
export interface Promised {
  readonly lot: string;
  readonly face: string;
  readonly file: string;
  readonly count: number | undefined;
  readonly stay: Stay | undefined;
  readonly draft: boolean;
}

interface Sorted {
  readonly byLot: ReadonlyMap<string, readonly Promised[]>;
  readonly byFile: ReadonlyMap<string, readonly Promised[]>;
}

const sorted = new WeakMap<readonly Promised[], Sorted>();

function grouped(promises: readonly Promised[], by: "lot" | "file"): ReadonlyMap<string, readonly Promised[]> {
  const groups = new Map<string, Promised[]>();
  for (const each of promises) {
    const group = groups.get(each[by]);
    if (group) group.push(each);
    else groups.set(each[by], [each]);
  }
  return groups;
}

/** Sorted once: every document asks for its own lots among what all of them promise. */
function sort(promises: readonly Promised[]): Sorted {
  const known = sorted.get(promises);
  if (known) return known;
  const made = { byLot: grouped(promises, "lot"), byFile: grouped(promises, "file") };
  sorted.set(promises, made);
  return made;
}

/** What is promised of a lot. */
export const promisedOf = (promises: readonly Promised[], lot: string): readonly Promised[] =>
  sort(promises).byLot.get(lot) ?? [];

/** What a document promises. */
export const promisedBy = (promises: readonly Promised[], file: string): readonly Promised[] =>
  sort(promises).byFile.get(file) ?? [];

type Mapping = Readonly<Record<string, Data>>;
const mapping = (data: Data | undefined): Mapping =>
  data !== null && typeof data === "object" && !Array.isArray(data) ? (data as Mapping) : {};

/** Reads `2027-03-05 to 2027-03-08`, `from 2027-03-05` or one day; undefined when it is none of them or no real date. */
export function stayOf(written: Data | undefined): Stay | undefined {
  if (typeof written !== "string") return undefined;
  const match = /^(from )?(\d{4}-\d{2}-\d{2})(?: to (\d{4}-\d{2}-\d{2}))?$/u.exec(written.trim());
  const [from, to] = [match?.[2], match?.[3]];
  if (from === undefined || !isDay(from) || (to !== undefined && (!isDay(to) || to < from))) return undefined;
  return match?.[1] ? { from } : { from, to: to ?? from };
}

/** More of anything than this is a slip, which the schema tells; a sum of such numbers would be none. */
const MOST = 1_000_000;

/** A whole number of things, nought among them; anything else is not known. */
const countOf = (written: Data | undefined): number | undefined =>
  typeof written === "number" && Number.isInteger(written) && written >= 0 && written <= MOST ? written : undefined;

function panelsOf(face: Mapping): number | undefined {
  const [columns, rows] = [countOf(face.columns), countOf(face.rows)];
  if (columns === undefined || rows === undefined) return undefined;
  const omitted = new Set<string>();
  for (const text of Array.isArray(face.omit) ? (face.omit as readonly Data[]) : []) {
    const read = readCells(typeof text === "string" ? text : "");
    if (read.ok)
      for (const cell of read.cells) if (cell.row < rows && cell.column < columns) omitted.add(cellName(cell));
  }
  return columns * rows - omitted.size;
}

/** Panels and spares a face needs, by its design; undefined when either is not written down. */
function needOf(face: Mapping): number | undefined {
  const [panels, spares] = [panelsOf(face), countOf(face.spares)];
  return panels === undefined || spares === undefined ? undefined : panels + spares;
}

/**
 * A lot by name gives all panels and spares; a list of lots says how many come out of each, spares among them. What is
 * hung and is in no lot of the list has to come out of one of them: any may be asked for that much more.
 */
function lotsOf(face: Mapping): readonly (readonly [string, number | undefined])[] {
  if (typeof face.lot === "string") return [[face.lot, needOf(face)]];
  // A list says how many come out of each lot, so spares that are not written are none of it.
  const need = needOf({ spares: 0, ...face });
  const counts = Object.entries(mapping(face.lot)).map(([lot, count]) => [lot, countOf(count)] as const);
  const listed = counts.reduce<number | undefined>(
    (all, [, count]) => (all === undefined || count === undefined ? undefined : all + count),
    0,
  );
  const short = need === undefined || listed === undefined ? undefined : Math.max(0, need - listed);
  return counts.map(([lot, count]) => [lot, count === undefined || short === undefined ? undefined : count + short]);
}

/** What one document promises out of the stock. */
export function promisesOf(file: string, data: Data | undefined): readonly Promised[] {
  const document = mapping(data);
  const stay = stayOf(document["on-site"]);
  const faces = Object.entries(mapping(document.faces));
  return faces.flatMap(([face, written]) =>
    lotsOf(mapping(written)).map(([lot, count]) => ({
      lot,
      face,
      file,
      count,
      stay,
      draft: document.status === "draft",
    })),
  );
}
