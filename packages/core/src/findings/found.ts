import type { CheckEntry } from "../inspection/record.js";
import { type WhereFound, whereFound } from "./where-found.js";

/** A mistake with the checks that only follow from it. */
export interface FoundMistake {
  readonly check: CheckEntry;
  readonly behind: readonly CheckEntry[];
}

/** One thing that is not written down, with the checks that wait for it. */
export interface FoundGap {
  readonly path: string;
  /** The file it belongs in, when that is not the document itself. */
  readonly file?: string;
  /** Place of the venue where a person finds it. */
  readonly place?: string;
  /** What it is, and whose: `breaker rating` of `Circuit stage-4`. */
  readonly what?: string;
  readonly of?: string;
  /** Where a person finds it. */
  readonly found?: WhereFound;
  /** What to do, where no rule names the thing. */
  readonly mend?: string;
  readonly waiting: readonly CheckEntry[];
}

/** What does not hold in a document, causes before what follows from them. */
export interface Found {
  readonly mistakes: readonly FoundMistake[];
  /** Checks that follow from mistakes of other files, by file and line. */
  readonly elsewhere: readonly {
    readonly file: string;
    readonly line: number;
    readonly behind: readonly CheckEntry[];
  }[];
  readonly gaps: readonly FoundGap[];
  /** How many checks wait for the gaps: one may wait for several. */
  readonly waiting: number;
  /** Guesses, as gaps whose words are what is written; what would fail were they right stands among the rest as well. */
  readonly guesses: readonly FoundGap[];
  /** How many checks rest on the guesses. */
  readonly resting: number;
  /** Everything else that does not hold, as it stands in the record. */
  readonly rest: readonly CheckEntry[];
}

const LEVELS = ["shall", "should", "note"] as const;

/** The gravest level among checks. */
export const gravest = (checks: readonly CheckEntry[]): CheckEntry["level"] =>
  LEVELS.find((level) => checks.some((check) => check.level === level)) ?? "note";

const isMistake = ({ rule, outcome }: CheckEntry): boolean =>
  outcome === "fails" && (rule === "document.front-matter" || rule === "document.parts");

/** A path of the document or a part; words that only say what is missing are none. */
const isPath = (text: string): boolean => /^[\w.-]+$/u.test(text);

function foundAt(path: string): Pick<FoundGap, "found"> {
  const found = whereFound(path);
  return found === undefined ? {} : { found };
}

function gapsOf(open: readonly CheckEntry[]): readonly FoundGap[] {
  const gaps = new Map<string, { gap: Omit<FoundGap, "waiting">; waiting: Set<CheckEntry> }>();
  const put = (gap: Omit<FoundGap, "waiting">, check: CheckEntry): void => {
    const key = `${gap.file ?? ""}\u0000${gap.path}`;
    const known = gaps.get(key) ?? { gap, waiting: new Set() };
    // Words from a formula say more than a path.
    if (known.gap.what === undefined && gap.what !== undefined) known.gap = gap;
    known.waiting.add(check);
    gaps.set(key, known);
  };
  for (const check of open) {
    const told = check["waits-for"] ?? [];
    for (const gap of told) put(gap, check);
    const paths = (check.missing ?? []).filter((path) => isPath(path) && !told.some((gap) => gap.path === path));
    for (const path of paths) put({ path, ...(check.mend ? { mend: check.mend } : {}), ...foundAt(path) }, check);
  }
  const rank = ({ waiting }: FoundGap): number => LEVELS.indexOf(gravest(waiting));
  return [...gaps.values()]
    .map(({ gap, waiting }) => ({ ...gap, waiting: [...waiting] }))
    .sort((one, other) => rank(one) - rank(other) || other.waiting.length - one.waiting.length);
}

/** Sorts what does not hold: mistakes first, each with what follows from it; then what is not written down; then the rest. */
export function foundIn(checks: readonly CheckEntry[]): Found {
  const not = checks.filter(({ outcome }) => outcome !== "holds");
  const follows = not.filter((check) => check["follows-from"] !== undefined);
  const free = not.filter((check) => check["follows-from"] === undefined);
  const isOf = (from: CheckEntry["follows-from"], { at }: CheckEntry): boolean =>
    from !== undefined && from.file === undefined && from.path === at.path && from.line === at.line;
  const mistakes: FoundMistake[] = [];
  const taken = new Set<CheckEntry>();
  for (const check of free.filter(isMistake)) {
    const behind = follows.filter((each) => !taken.has(each) && isOf(each["follows-from"], check));
    for (const each of behind) taken.add(each);
    mistakes.push({ check, behind });
  }
  const places = new Map<string, { file: string; line: number; behind: CheckEntry[] }>();
  for (const check of follows) {
    const { file, line = 1 } = check["follows-from"] ?? {};
    if (taken.has(check)) continue;
    const key = `${file ?? ""}:${line}`;
    const place = places.get(key) ?? { file: file ?? "", line, behind: [] };
    place.behind.push(check);
    places.set(key, place);
  }
  const others = free.filter((check) => !isMistake(check));
  const resting = others.filter((check) => check["rests-on-guesses"] !== undefined && check.outcome === "open");
  const isGap = (check: CheckEntry): boolean =>
    check.outcome === "open" &&
    (check.missing ?? []).some(isPath) &&
    check["rests-on-bounds"] === undefined &&
    !resting.includes(check);
  const open = others.filter(isGap);
  const gaps = gapsOf(open);
  return {
    mistakes,
    elsewhere: [...places.values()],
    gaps,
    waiting: open.length,
    guesses: gapsOf(resting),
    resting: resting.length,
    rest: others.filter(
      (check) => !open.includes(check) && !(resting.includes(check) && check["if-right"] === "holds"),
    ),
  };
}
