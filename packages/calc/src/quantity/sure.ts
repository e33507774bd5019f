/**
 * How sure a value is, where it is less than stated: a guess (`12 A ?`), a bound (`at most 200 ft`), or assumed, where
 * nothing is written and a source gives an interval.
 */
export type Sure = "guess" | "at most" | "at least" | "assumed";

/** A text without what says how sure it is. */
export interface Marked {
  readonly text: string;
  readonly sure?: Sure;
}

const GUESS = /^(.*\S)\s*\?$/su;
const BOUND = /^(at most|at least)\s+(\S.*)$/isu;

/** Takes `?` from behind, or `at most` and `at least` from in front of, a value as people write it. */
export function marked(input: string): Marked {
  const text = input.trim();
  const guess = GUESS.exec(text);
  if (guess) return { text: (guess[1] as string).trim(), sure: "guess" };
  const bound = BOUND.exec(text);
  if (!bound) return { text };
  return { text: bound[2] as string, sure: (bound[1] as string).toLowerCase() as Sure };
}
