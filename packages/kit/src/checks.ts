import type { Kind, SourceId, Value } from "@plumbmark/calc";
import type { Build, Mend, RawCheck, Sense, Thing, Turns, Words } from "@plumbmark/core";

const at = ({ path, place }: Thing): Pick<RawCheck, "at" | "place"> => ({ at: path, ...(place ? { place } : {}) });

/** Two kinds of quantity that may be compared: the same, or one that is only known when the rule runs. */
type Agreeing<M extends Kind, A extends Kind> = Kind extends M | A
  ? unknown
  : [A] extends [M]
    ? unknown
    : `${NoInfer<M>} is measured and ${NoInfer<A>} is allowed: they cannot be compared`;

interface Said {
  /** What was found and what is allowed, as one sentence; the values come printed in the document's own units. */
  readonly says: (words: Words) => string;
  /** What would put it right. */
  readonly mend?: string;
  /** Changes of the document that would put it right. */
  readonly mends?: readonly Mend[];
  /** The one figure that would turn it, and which way it has to go. */
  readonly turns?: Turns | undefined;
  /** Less grave than its rule. */
  readonly level?: "should" | "note";
  /** What this check alone rests on, where its rule names more. */
  readonly sources?: readonly SourceId[];
}

/** What is measured and what is allowed: two values of one kind of quantity. */
export interface Comparison<M extends Kind, A extends Kind> extends Said {
  /** What was found. */
  readonly measured: Value<M>;
  /** What is allowed: of the same kind of quantity. */
  readonly allowed: Value<A> & Agreeing<M, A>;
}

const compare =
  (sense: Sense) =>
  <M extends Kind, A extends Kind>(thing: Thing, comparison: Comparison<M, A>): RawCheck => ({
    ...at(thing),
    form: "compare",
    sense,
    ...comparison,
  });

/** What is measured is at most what is allowed. A value that is missing makes the check open by itself. */
export const atMost = compare("at most");

/** What is measured is at least what is allowed. */
export const atLeast = compare("at least");

/** What is measured is what is allowed. */
export const agrees = compare("exactly");

/** What is measured lies between two ends, both of which are allowed. */
export interface Between<M extends Kind, L extends Kind, U extends Kind> extends Said {
  /** What was found. */
  readonly measured: Value<M>;
  /** The lower end, which is allowed. */
  readonly least: Value<L> & Agreeing<M, L>;
  /** The upper end, which is allowed. */
  readonly most: Value<U> & Agreeing<M, U>;
}

/** What is measured is at least `least` and at most `most`; in `says`, `allowed` reads `2.1 m to 3 m`. */
export const within = <M extends Kind, L extends Kind, U extends Kind>(
  thing: Thing,
  { measured, least, most, ...said }: Between<M, L, U>,
): RawCheck => ({ ...at(thing), form: "compare", sense: "within", measured, allowed: least, most, ...said });

/** A plain statement that holds or does not. */
export const is = (
  thing: Thing,
  statement: {
    readonly holds: boolean;
    readonly says: string;
    readonly mend?: string;
    /** Changes of the document that would make it hold. */
    readonly mends?: readonly Mend[];
    readonly sources?: readonly SourceId[];
  },
): RawCheck => ({
  ...at(thing),
  form: "plain",
  holds: statement.holds,
  says: () => statement.says,
  ...(statement.mend ? { mend: statement.mend } : {}),
  ...(statement.mends ? { mends: statement.mends } : {}),
  ...(statement.sources ? { sources: statement.sources } : {}),
});

/** It cannot be told: something is not written down. `needs` are the paths where it belongs. */
export const open = (
  thing: Thing,
  gap: {
    readonly says: string;
    readonly mend: string;
    /** Changes of the document by which it could be told. */
    readonly mends?: readonly Mend[];
    readonly needs?: readonly string[];
    readonly sources?: readonly SourceId[];
  },
): RawCheck => ({
  ...at(thing),
  form: "open",
  says: () => gap.says,
  mend: gap.mend,
  ...(gap.mends ? { mends: gap.mends } : {}),
  gaps: gap.needs ?? [],
  ...(gap.sources ? { sources: gap.sources } : {}),
});

/** Says which document a check is about; every check of a rule over the repository needs it. */
export const about = (build: Build, check: RawCheck): RawCheck => ({ ...check, file: build.context.file });
