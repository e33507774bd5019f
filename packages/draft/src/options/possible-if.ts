import type { CheckEntry } from "@plumbmark/core";

/** What is on the shelf today and good today, and is to be looked at again before the build. */
const INSPECTED = "stock.inspected";

const isToCome = ({ rule, outcome }: CheckEntry): boolean => rule === INSPECTED && outcome === "open";

/** What has to be done meanwhile, each thing once, with how many parts it is asked of. */
export function possibleIf(checks: readonly CheckEntry[]): readonly string[] {
  const asked = new Map<string, number>();
  // What waits for a day nobody wrote down is to be found out; this is to be done.
  for (const { mend = "" } of checks.filter((each) => isToCome(each) && (each.missing ?? []).length === 0))
    asked.set(mend, (asked.get(mend) ?? 0) + 1);
  return [...asked].map(([mend, count]) =>
    count === 1 ? `One part: ${mend}` : `${count} parts, each listed in the draft: ${mend}`,
  );
}
