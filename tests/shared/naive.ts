import type { SharedUse } from "@plumbmark/core";

/** A use of something with its days, as a loop over days needs it. */
export interface NaiveUse extends Pick<SharedUse, "amounts" | "beside" | "once"> {
  readonly file: string;
  readonly from: string;
  readonly to: string;
}

const DAY = 86_400_000;

/** Every day from one to another, both included. */
export function daysBetween(from: string, to: string): readonly string[] {
  const days: string[] = [];
  for (let at = Date.parse(from); at <= Date.parse(to); at += DAY) days.push(new Date(at).toISOString().slice(0, 10));
  return days;
}

/** What one document's use comes to on the worst of its days, day by day and one after another: slow, and plain. */
export function naiveWorst(own: NaiveUse, all: readonly NaiveUse[], leg: string): number {
  let worst = 0;
  for (const day of daysBetween(own.from, own.to)) {
    let sum = 0;
    const seen = new Set<string>();
    for (const use of all) {
      if (use.from > day || use.to < day) continue;
      if (use.once !== undefined && seen.has(use.once)) continue;
      if (use.once !== undefined) seen.add(use.once);
      sum += use.amounts[leg] ?? 0;
    }
    if (sum > worst) worst = sum;
  }
  return worst;
}
