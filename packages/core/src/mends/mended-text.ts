import { edited } from "../document/edited.js";
import type { Mistake } from "../document/mistake.js";
import type { MendEntry } from "../inspection/record.js";
import { mendsOfMistake } from "./mend.js";
import { isMade } from "./mendable.js";

/** One slip hides others behind it: a text is read again after each, and no file has more of them than this. */
const MOST_ROUNDS = 400;

/** A mend that was made; lines of a text stay where they are. */
export interface MadeMend {
  readonly line: number;
  readonly was: string;
  readonly becomes: string;
}

export interface MendedText {
  readonly text: string;
  readonly made: readonly MadeMend[];
}

const isBefore = (one: MendEntry["at"], other: MendEntry["at"]): boolean =>
  one.endLine < other.line || (one.endLine === other.line && one.endColumn <= other.column);

/** Of those that are made, such of which no two overlap; of two that do, the earlier in the text. */
export function apart(mends: readonly MendEntry[]): readonly MendEntry[] {
  const sorted = mends
    .filter(isMade)
    .sort((one, other) => one.at.line - other.at.line || one.at.column - other.at.column);
  const kept: MendEntry[] = [];
  for (const each of sorted) {
    const last = kept.at(-1);
    if (!last || isBefore(last.at, each.at)) kept.push(each);
  }
  return kept;
}

export const withMends = (text: string, mends: readonly MendEntry[]): string =>
  edited(
    text,
    mends.map(({ at, becomes }) => ({ place: at, text: becomes })),
  );

export const madeMend = ({ at, was, becomes }: MendEntry): MadeMend => ({ line: at.line, was, becomes });

const nameOf = ({ at, becomes }: MendEntry): string => `${at.line}:${becomes}`;
const told = (mistakes: readonly Mistake[]): ReadonlySet<string> =>
  new Set(mistakes.map(({ path, says }) => `${path} ${says}`));

/**
 * A text with those of its mistakes put right that have one answer. A change that leaves another mistake in its line,
 * without an answer of its own, was no answer: it is not made.
 */
export function withoutMistakes(text: string, mistakesIn: (text: string) => readonly Mistake[]): MendedText {
  const refused = new Set<string>();
  const made: MadeMend[] = [];
  let now = text;
  let mistakes = mistakesIn(now);
  for (let round = 0; round < MOST_ROUNDS && mistakes.length > 0; round += 1) {
    const sure = apart(
      mistakes.flatMap((each) => mendsOfMistake(each, now)).filter((each) => each.sure && !refused.has(nameOf(each))),
    );
    if (sure.length === 0) break;
    const next = withMends(now, sure);
    const left = mistakesIn(next);
    const before = told(mistakes);
    const fresh = left.filter(({ path, says, edit }) => edit?.sure !== true && !before.has(`${path} ${says}`));
    const wrong = sure.filter(({ at }) => fresh.some(({ place }) => place.line === at.line));
    if (wrong.length > 0) {
      for (const each of wrong) refused.add(nameOf(each));
      continue;
    }
    made.push(...sure.map(madeMend));
    now = next;
    mistakes = left;
  }
  return { text: now, made };
}
