import { withWay } from "../../model/shared/days.js";
import { Ledger } from "../../model/shared/ledger.js";
import type { SharedDesign } from "../../model/shared/shared-design.js";
import type { Booked, SharedUse, UseEntry } from "../../model/shared/use.js";
import { plainUse, usesOf } from "../../model/shared/uses-of.js";
import { stayOf } from "../../model/stock/bookings.js";
import type { OtherDocument, Outline } from "../../repository/files.js";
import { type ReadDocument, readDocument } from "../../repository/outline.js";
import type { Catalogue } from "../../repository/parts.js";
import { type DaysAway, type Stock, soundIn } from "../../repository/stock.js";
import type { Standards } from "../../standard/chain.js";
import type { Surveys } from "../../venue/survey.js";

/** What a use is worked out from. */
export interface UsesSource {
  readonly catalogue: Catalogue;
  readonly stock: Stock;
  readonly standards: Standards;
  readonly surveys: Surveys;
  readonly has: (path: string) => boolean;
  readonly sourceOf: (path: string) => object;
  readonly read: (path: string) => ReadDocument;
  /** The design of a document that is read. */
  readonly designOf: (read: ReadDocument) => SharedDesign;
}

/** What a document uses, with everything that was worked out from. */
interface Known {
  readonly catalogue: Catalogue;
  readonly stock: Stock;
  readonly standards: Standards;
  readonly surveys: Surveys;
  readonly uses: readonly SharedUse[];
}

const known = new WeakMap<object, Known>();

/**
 * What a document uses that others may use, too, by its model; worked out once while nothing of it is different.
 * Undefined of a document that is not inspected and whose text was not given.
 */
export function usesIn(outline: OtherDocument, snapshot: UsesSource): readonly SharedUse[] | undefined {
  if (outline.uses) return outline.uses;
  const { path } = outline;
  const source = snapshot.has(path) ? snapshot.sourceOf(path) : outline;
  const { catalogue, stock, standards, surveys } = snapshot;
  const found = known.get(source);
  const same = found?.catalogue === catalogue && found.stock === stock && found.standards === standards;
  if (same && found.surveys === surveys) return found.uses;
  const read = readAt(outline, snapshot);
  if (!read) return undefined;
  const uses = usesOf(snapshot.designOf(read)).map(plainUse);
  known.set(source, { catalogue, stock, standards, surveys, uses });
  return uses;
}

function readAt({ path, text }: OtherDocument, snapshot: UsesSource): ReadDocument | undefined {
  if (snapshot.has(path)) return snapshot.read(path);
  return text === undefined ? undefined : readDocument({ path, text });
}

/** What a document uses, booked on its days: of what is owned the way there and back are among them. */
export function bookedIn(
  { path, stay, draft }: Outline,
  uses: readonly SharedUse[],
  days: DaysAway,
): readonly Booked[] {
  const away = stay && withWay(stay, days);
  return uses.map((use) => ({
    ...use,
    ...{ file: path, stay: use.of === "item" ? away : stay, draft: draft === true },
  }));
}

/** What a document that is no draft uses on its days, for its entry of the record; undefined where it has none. */
export function useEntries(build: SharedDesign): readonly UseEntry[] | undefined {
  const { reader, context } = build;
  const stay = stayOf(reader.data("on-site"));
  if (!stay || reader.text("status") === "draft") return undefined;
  const { days, lots } = context.stock;
  const outline = { path: context.file, stay, promises: [] };
  const booked = bookedIn(outline, usesOf(build).map(plainUse), days);
  const away = withWay(stay, days);
  const panels = context.ownPromises.map(({ lot: name, face, count }): UseEntry => {
    const lot = lots.get(name);
    return {
      ...{ of: "lot" as const, name, path: `faces.${face}.lot`, unit: "{count}", ...away },
      amounts: count === undefined ? {} : { n: count },
      ...(lot ? { allowed: soundIn(lot) } : {}),
    };
  });
  const entries = booked.map(({ file: _, draft: __, stay: own, ...use }): UseEntry => ({ ...use, ...(own ?? stay) }));
  return entries.length + panels.length === 0 ? undefined : [...panels, ...entries];
}

/**
 * Who uses what when.
 * @param usesOf what the document at a path uses; asked only where somebody asks about days on which it is there
 */
export function ledgerOf(
  outlines: readonly Outline[],
  days: DaysAway,
  usesOf: (path: string) => readonly SharedUse[] | undefined,
): Ledger {
  const byPath = new Map(outlines.map((each) => [each.path, each]));
  const dwellers = outlines.map(({ path, venue, stay }) => ({ path, venue, stay: stay && withWay(stay, days) }));
  return new Ledger(dwellers, (path) => {
    const uses = usesOf(path);
    return uses && bookedIn(byPath.get(path) as Outline, uses, days);
  });
}
