import type { Unsure, World } from "../document/unsure.js";
import type { CheckEntry } from "../inspection/record.js";

/** Checks in the order they were made, by rule and place: the same thing is found again in another world. */
function byPlace(
  checks: readonly CheckEntry[],
): (check: CheckEntry, index: number, count: number) => CheckEntry | undefined {
  const groups = grouped(checks);
  return (check, index, count) => {
    const group = groups.get(keyOf(check)) ?? [];
    return group.length === count ? group[index] : undefined;
  };
}

const keyOf = ({ rule, at }: CheckEntry): string => `${rule}\u0000${at.path}`;

function grouped(checks: readonly CheckEntry[]): ReadonlyMap<string, readonly CheckEntry[]> {
  const groups = new Map<string, CheckEntry[]>();
  for (const check of checks) {
    const group = groups.get(keyOf(check));
    if (group) group.push(check);
    else groups.set(keyOf(check), [check]);
  }
  return groups;
}

/** What each check comes to in another world; undefined where it is not made there. */
function counterparts(
  checks: readonly CheckEntry[],
  others: readonly CheckEntry[],
): ReadonlyMap<CheckEntry, CheckEntry | undefined> {
  const find = byPlace(others);
  const found = new Map<CheckEntry, CheckEntry | undefined>();
  for (const group of grouped(checks).values())
    for (const [index, check] of group.entries()) found.set(check, find(check, index, group.length));
  return found;
}

const isTold = ({ outcome }: CheckEntry): boolean => outcome === "holds" || outcome === "fails";

const same = (one: CheckEntry, other: CheckEntry): boolean =>
  one.outcome === other.outcome &&
  one.says === other.says &&
  JSON.stringify([one.measured, one.allowed]) === JSON.stringify([other.measured, other.allowed]);

const listed = (unsure: readonly Unsure[]): string =>
  unsure.map(({ path, text }) => `\`${path}\` (${text})`).join(", ");

/**
 * What rests on a guess is open: a check that comes out otherwise, or not at all, without the guesses. It says which, and
 * how it would come out were they right.
 * @param without the checks made with every guess taken out
 */
export function restingOnGuesses(
  checks: readonly CheckEntry[],
  guesses: readonly Unsure[],
  without: readonly CheckEntry[],
): readonly CheckEntry[] {
  const paths = new Set(guesses.map(({ path }) => path));
  const others = counterparts(checks, without);
  return checks.map((check) => {
    const other = others.get(check);
    const traced = check["rests-on-guesses"] ?? [];
    if (!isTold(check) || (traced.length === 0 && other && same(check, other))) return check;
    // That a figure of the text hides a guess, or shows one where there is none, is so however the guess turns out.
    if (check.rule === "document.quoted-values" && check.outcome === "fails" && check.says.includes("guess"))
      return check;
    const named = new Set([...traced, ...(other?.missing ?? []).filter((path) => paths.has(path))]);
    const of = guesses.filter(({ path }) => named.size === 0 || named.has(path));
    const right = check.outcome === "holds" ? "holds" : "fails";
    const { mend: _, ...kept } = check;
    return {
      ...kept,
      outcome: "open",
      says: `${check.says} It rests on ${of.length === 1 ? "a guess" : "guesses"}: ${listed(of)}. If ${of.length === 1 ? "that is" : "they are"} right, it ${right}.`,
      mend: `Find out ${of.map(({ path }) => `\`${path}\``).join(", ")}, and write ${of.length === 1 ? "it" : "them"} without \`?\`.`,
      missing: of.map(({ path }) => path),
      "waits-for": of.map(({ path, text }) => ({ path, what: text })),
      "rests-on-guesses": of.map(({ path }) => path),
      "if-right": right,
    };
  });
}

/** Checks made with bounds at other ends: which bounds, and what came of it. */
export interface OtherEnds {
  readonly at: readonly Unsure[];
  readonly checks: readonly CheckEntry[];
}

/**
 * Whether another end says anything of a check. The text quotes a figure as it is computed and printed, with what is
 * assumed at the end that is printed, too: at the other end it is another figure, and no mistake of the text.
 */
const saysOf = ({ rule }: CheckEntry, at: readonly Unsure[]): boolean =>
  rule !== "document.quoted-values" || at.every(({ sure }) => sure !== "assumed");

/** A check holds only if it holds at each bound and at the other end of what it leaves possible. */
export function withinBounds(checks: readonly CheckEntry[], ends: readonly OtherEnds[]): readonly CheckEntry[] {
  const found = ends.map(({ at, checks: others }) => ({ at, others: counterparts(checks, others) }));
  return checks.map((check) => {
    if (!isTold(check)) return check;
    const [otherwise] = found.filter(
      ({ at, others }) => saysOf(check, at) && others.get(check)?.outcome !== check.outcome,
    );
    if (!otherwise) return check;
    const { at, others } = otherwise;
    const there = others.get(check);
    const came = there === undefined || !isTold(there) ? "cannot be told" : there.outcome;
    const { mend: _, ...kept } = check;
    return {
      ...kept,
      outcome: "open",
      says: at.some(({ sure }) => sure === "assumed")
        ? `${check.says} So it ${check.outcome} at one end of ${listed(at)}; at the other it ${came}.`
        : `${check.says} So it ${check.outcome} as ${listed(at)} is written; at the other end of what that leaves possible it ${came}.`,
      mend: `Write the value itself under ${at.map(({ path }) => `\`${path}\``).join(", ")}.`,
      missing: at.map(({ path }) => path),
      "rests-on-bounds": at.map(({ path }) => path),
    };
  });
}

const NOTHING: World = { without: new Set(), instead: new Map() };

/** The world without the guesses. */
export const withoutGuesses = (guesses: readonly Unsure[]): World => ({
  ...NOTHING,
  without: new Set(guesses.map(({ path }) => path)),
});

/** Worlds more than these would keep the author waiting. */
const MOST = 12;

/**
 * Bounds at their other ends: all of them, then each alone, then all but each. Everything a rule compares moves one way with
 * each value, so that the worst case is at ends; of many bounds not every mixture is tried.
 */
export function otherEnds(
  bounds: readonly Unsure[],
): readonly { readonly at: readonly Unsure[]; readonly world: World }[] {
  const alone = bounds.length > 1 ? bounds.map((each) => [each]) : [];
  const allBut = bounds.length > 2 ? bounds.map((each) => bounds.filter((other) => other !== each)) : [];
  return [bounds, ...alone, ...allBut].slice(0, MOST).map((at) => ({
    at,
    world: { ...NOTHING, instead: new Map(at.map(({ path, other = 0 }) => [path, other])) },
  }));
}
