import { RE2JS } from "re2js";

/** A pattern longer than this is a program, and belongs in a rule with code. */
const LONGEST = 1000;

/** A pattern that is matched in time that grows with the text and no faster, whatever the pattern is. */
export interface LinearPattern {
  readonly test: (text: string) => boolean;
}

const known = new Map<string, LinearPattern>();
/** More patterns than house standards have; what is remembered stays small. */
const MOST = 500;

/**
 * Compiles a regular expression of a document or a house standard. The engine is one of automata and not of trial: one
 * that tries would be kept busy for years by `(a+)+$`. It has no look-ahead and no back-references, which no automaton
 * can match.
 * @throws Error of the engine, in words, when it is no such pattern
 */
export function linearPattern(pattern: string): LinearPattern {
  const found = known.get(pattern);
  if (found) return found;
  if (pattern.length > LONGEST) throw new SyntaxError(`it is longer than ${LONGEST} characters`);
  const made = RE2JS.compile(RE2JS.translateRegExp(pattern));
  const linear = {
    test: (text: string): boolean => made.matcher(text).find(),
    // A validator of schemas tells patterns apart by what they are as text.
    toString: (): string => `/${pattern}/u`,
  };
  if (known.size < MOST) known.set(pattern, linear);
  return linear;
}

/** The same for a JSON Schema validator. */
export const linearPatterns = Object.assign((pattern: string) => linearPattern(pattern) as RegExp, {
  // Only validators that are written out as text need to name it.
  code: "linearPattern",
});
