import type { Value } from "../formula/value.js";
import type { SourceId } from "../sources/index.js";

export type Answer = number | string | boolean | undefined | readonly number[];

/** A function that computes but is no single formula: a reading of a table, a solver, a condition. */
export interface Method {
  /** The function's own name. */
  readonly name: string;
  readonly title: string;
  readonly of: unknown;
  /** What goes in and what comes out, with units. */
  readonly units: string;
  readonly sources: readonly SourceId[];
  readonly validity: string;
  readonly example: {
    /** The question in words and numbers. */
    readonly asks: string;
    readonly got: () => Answer;
    readonly gives: Answer;
    /** In the unit of `gives`; 1e-9 unless told. */
    readonly within?: number;
    readonly from: string;
  };
}

/** The number of a value; no number where it is missing. */
export const numberOf = (value: Value | undefined): number => (value?.known ? value.value : Number.NaN);
