import type { CheckEntry } from "../record.js";

/** A margin is of what was worked out: a plug of its outlet's rating and a port count that is used up just fit. */
const hasMargin = ({ share, level, allowed, outcome, working = [] }: CheckEntry): boolean =>
  share !== undefined &&
  level !== "note" &&
  allowed?.sense !== "exactly" &&
  working.length > 0 &&
  !(share === 1 && outcome === "holds");

/** The check nearest its limit or farthest over it; none where nothing is compared with a limit. */
export function worstOf(checks: readonly CheckEntry[]): CheckEntry | undefined {
  const shared = checks.filter(hasMargin);
  return shared.reduce<CheckEntry | undefined>(
    (worst, check) => (worst?.share === undefined || (check.share ?? 0) > worst.share ? check : worst),
    undefined,
  );
}
