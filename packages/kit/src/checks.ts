import type { Value } from "@plumbmark/calc";
import type { RawCheck, Sense, Thing, Words } from "@plumbmark/core";

const at = ({ path, place }: Thing): Pick<RawCheck, "at" | "place"> => ({ at: path, ...(place ? { place } : {}) });

interface Comparison {
  readonly measured: Value;
  readonly allowed: Value;
  readonly says: (words: Words) => string;
  readonly mend?: string;
}

const compare =
  (sense: Sense) =>
  (thing: Thing, comparison: Comparison): RawCheck => ({ ...at(thing), form: "compare", sense, ...comparison });

/** What is measured is at most what is allowed. A value that is missing makes the check open by itself. */
export const atMost = compare("at most");

/** What is measured is at least what is allowed. */
export const atLeast = compare("at least");

/** What is measured is what is allowed. */
export const agrees = compare("exactly");

/** A plain statement that holds or does not. */
export const is = (
  thing: Thing,
  statement: { readonly holds: boolean; readonly says: string; readonly mend?: string },
): RawCheck => ({
  ...at(thing),
  form: "plain",
  holds: statement.holds,
  says: () => statement.says,
  ...(statement.mend ? { mend: statement.mend } : {}),
});

/** It cannot be told: something is not written down. */
export const open = (
  thing: Thing,
  gap: { readonly says: string; readonly mend: string; readonly needs?: readonly string[] },
): RawCheck => ({
  ...at(thing),
  form: "open",
  says: () => gap.says,
  mend: gap.mend,
  gaps: gap.needs ?? [],
});
