import type { InspectedDocument } from "@plumbmark/core";
import type { Brief } from "../brief.js";
import { lengthAsWritten } from "../write/length.js";
import type { NeededPiece, Shortfall } from "./option.js";

/** Everything a build needs, counted from its design, by part and length. What is not known in number is left out. */
export function needsOf(
  { build }: Pick<InspectedDocument, "build">,
  { system }: Pick<Brief, "system">,
): readonly NeededPiece[] {
  const needs = new Map<string, NeededPiece>();
  for (const { name, kind, count, length } of build.takeoff.pieces) {
    if (!count.known || count.value <= 0) continue;
    const metres = length?.known ? length.value : undefined;
    const text = length?.known && length.origin.from === "written" ? length.origin.text : undefined;
    const written = metres === undefined ? undefined : (text ?? lengthAsWritten(metres, system));
    const key = `${name} ${metres?.toFixed(4) ?? ""}`;
    const own = metres === undefined || written === undefined ? {} : { metres, length: written };
    needs.set(key, { part: name, kind, ...own, count: (needs.get(key)?.count ?? 0) + count.value });
  }
  return [...needs.values()];
}

/** `1 cord-12-3 of 50 ft, 2 shackle-3-8`. */
export const shortfallText = (shortfall: readonly Shortfall[]): string =>
  shortfall
    .map(({ part, length, count }) => `${count} ${part}${length === undefined ? "" : ` of ${length}`}`)
    .join(", ");

/** What of it is not there on the days: panels that are in no lot, and pieces the holdings list too few of. */
export function shortfallIn(
  brief: Brief,
  needs: readonly NeededPiece[],
  lot: string | undefined,
): readonly Shortfall[] {
  return needs.flatMap(({ part, kind, metres, length, count }) => {
    if (kind === "panel") return lot === undefined ? [{ part, count }] : [];
    const item = brief.stock.items.get(part);
    if (!item) return [];
    const listed = item.lengths
      ? item.lengths.find((each) => metres !== undefined && Math.abs(each.length - metres) < 1e-6)?.count
      : undefined;
    const owned = item.lengths
      ? (listed ?? 0)
      : (item.count ?? item.serials?.filter(({ fault }) => fault === undefined).length ?? 0);
    const free = brief.free?.item(part, item.lengths ? metres : undefined)?.free ?? owned;
    const short = count - free;
    const own = metres === undefined || length === undefined || !item.lengths ? {} : { metres, length };
    return short > 0 ? [{ part, ...own, count: short }] : [];
  });
}
