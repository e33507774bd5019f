import type { Kind } from "../quantity/kinds.js";
import type { Print } from "../quantity/print.js";
import type { Sure } from "../quantity/sure.js";
import type { Unit } from "../quantity/units.js";
import type { SourceId } from "../sources/index.js";

/** Something that is not written down: where it belongs and what it is called. */
export interface Gap {
  /** Path in the document or part, for instance `power.circuits.stage-4.breaker`. */
  readonly path: string;
  /** What is missing in words: "breaker rating". */
  readonly what: string;
  /** Whose it is, for the sentence: "Circuit stage-4". */
  readonly of?: string;
  /** File it belongs in, when that is not the document itself. */
  readonly file?: string;
  /** Place of the venue where a person finds it, when it belongs in a survey. */
  readonly place?: string;
  /** Replaces the stock sentence when "is not written down" would be wrong (for instance outside a formula's validity). */
  readonly because?: string;
}

/** One line of a working: the formula, its inputs and where it comes from. */
export interface Step {
  /** The formula in symbols: `I = S ÷ V`. */
  readonly formula: string;
  /** The same with the numbers put in, in units that make the arithmetic true. */
  readonly show: (print: Print) => string;
  readonly source: SourceId;
  readonly inputs: readonly Known[];
  readonly note?: string;
}

/** Where a value is stated that a document rests on without writing it: in the survey of its venue. */
export interface StatedIn {
  readonly file: string;
  /** Path in that file. */
  readonly path: string;
  readonly line: number;
  /** Who states it, in words: "the survey of 2026-10-02 by R. Tallow". */
  readonly by: string;
}

/** Where a known value comes from. */
export type Origin =
  | { readonly from: "written"; readonly path: string; readonly text: string; readonly stated?: StatedIn }
  | { readonly from: "step"; readonly step: Step }
  | { readonly from: "table"; readonly source: SourceId; readonly what: string }
  | { readonly from: "assumed"; readonly source: SourceId; readonly why: string; readonly path?: string }
  | { readonly from: "counted"; readonly what: string };

/** A value that is known, in the unit its kind is kept in (SI). */
export interface Known<K extends Kind = Kind> {
  /** True: there is a number. */
  readonly known: true;
  /** The number, in the unit the kind is kept in (SI). */
  readonly value: number;
  /** What kind of quantity it is. */
  readonly kind: K;
  /** Where it comes from: written, computed, from a table, assumed or counted. */
  readonly origin: Origin;
  /** The unit its author wrote, if it was written. */
  readonly unit?: Unit;
  /** How sure it is, where it is less than stated. What is worked out from it does not have this of its own: see `guessesIn`. */
  readonly sure?: Sure;
}

/** A value that cannot be told, with everything that is missing for it. Never zero, never passes a check. */
export interface Missing<K extends Kind = Kind> {
  /** False: nothing can be told of it. */
  readonly known: false;
  /** What kind of quantity it would be. */
  readonly kind: K;
  /** Everything that is missing for it. */
  readonly gaps: readonly Gap[];
}

/** A value of one kind of quantity, known or missing. The kind stands in the type, so that a length cannot be given for a mass. */
export type Value<K extends Kind = Kind> = Known<K> | Missing<K>;

/** A value that cannot be told, with what is missing for it. */
export const missing = <const K extends Kind>(kind: K, ...gaps: readonly Gap[]): Missing<K> => ({
  known: false,
  kind,
  gaps,
});

/** A number counted from the document itself (panels, hangs). */
export const counted = <const K extends Kind = "count">(
  value: number,
  what: string,
  kind: K = "count" as K,
): Known<K> => ({ known: true, value, kind, origin: { from: "counted", what } });

/** A value assumed because nothing is written, on the ground of a source or of practice; the working says so. */
export const assumed = <const K extends Kind>(value: number, kind: K, source: SourceId, why: string): Known<K> => ({
  known: true,
  value,
  kind,
  origin: { from: "assumed", source, why },
});

/** Whether anything was assumed within an interval at all: where nothing was, nothing has to be looked through for it. */
let anyAssumed = false;

/**
 * An end of an interval that a source gives for what nobody wrote down.
 * @param path where it would be written
 */
export function assumedWithin<K extends Kind>(end: Known<K>, path: string, source: SourceId, why: string): Known<K> {
  anyAssumed = true;
  return { ...end, sure: "assumed", origin: { from: "assumed", source, why, path } };
}

/** A value read from a published table. */
export const tabled = <const K extends Kind>(value: number, kind: K, source: SourceId, what: string): Known<K> => ({
  known: true,
  value,
  kind,
  origin: { from: "table", source, what },
});

/** The same value, its last step on the source that gives its figures rather than the one that gives the formula. */
export function restingOn<K extends Kind>(value: Value<K>, source: SourceId): Value<K> {
  if (!value.known || value.origin.from !== "step") return value;
  return { ...value, origin: { from: "step", step: { ...value.origin.step, source } } };
}

/** Whether any guess was read at all: in most repositories none is, and nothing has to be looked through for one. */
let anyGuess = false;

/** The same value as a guess. */
export function guessed<K extends Kind>(value: Known<K>): Known<K> {
  anyGuess = true;
  return { ...value, sure: "guess" };
}

const NONE: ReadonlySet<string> = new Set();
const guessesBy = new WeakMap<Known, ReadonlySet<string>>();

/** Paths of the guesses a value rests on: its own, and those of everything it is worked out from. */
export function guessesIn(value: Value): ReadonlySet<string> {
  if (!anyGuess || !value.known) return NONE;
  const known = guessesBy.get(value);
  if (known) return known;
  const found = new Set<string>();
  const { origin } = value;
  if (value.sure === "guess") found.add(origin.from === "written" ? origin.path : "");
  if (origin.from === "step")
    for (const input of origin.step.inputs) for (const path of guessesIn(input)) found.add(path);
  guessesBy.set(value, found);
  return found;
}

const assumedBy = new WeakMap<Known, ReadonlySet<string>>();

/** Paths of what is assumed within an interval and a value rests on: its own, and those of everything it is worked out from. */
export function assumedIn(value: Value): ReadonlySet<string> {
  if (!anyAssumed || !value.known) return NONE;
  const known = assumedBy.get(value);
  if (known) return known;
  const found = new Set<string>();
  const { origin } = value;
  if (value.sure === "assumed" && origin.from === "assumed") found.add(origin.path ?? "");
  if (origin.from === "step")
    for (const input of origin.step.inputs) for (const path of assumedIn(input)) found.add(path);
  assumedBy.set(value, found);
  return found;
}

/** What stands behind a printed value that rests on a guess. */
export const guessMark = (value: Value): string => (guessesIn(value).size > 0 ? " ?" : "");

/** A plain number for tests and examples. */
export const given = <const K extends Kind>(value: number, kind: K): Known<K> => ({
  known: true,
  value,
  kind,
  origin: { from: "written", path: "", text: "" },
});

/** All gaps of the values that are missing, each once. */
export function gapsOf(values: readonly Value[]): readonly Gap[] {
  const seen = new Map<string, Gap>();
  for (const value of values)
    if (!value.known) {
      // A missing value that names no gap is missing all the same: it must never be taken for one that is known.
      const gaps = value.gaps.length > 0 ? value.gaps : [{ path: "", what: `${value.kind} it needs` }];
      for (const gap of gaps) seen.set(`${gap.path}\u0000${gap.what}`, gap);
    }
  return [...seen.values()];
}

const NOT_STATED: readonly StatedIn[] = [];
const statedBy = new WeakMap<Known, readonly StatedIn[]>();

/** What other files state of a value: its own origin, and those of everything it is worked out from; each once. */
export function statedIn(value: Value): readonly StatedIn[] {
  if (!value.known) return NOT_STATED;
  const known = statedBy.get(value);
  if (known) return known;
  const { origin } = value;
  const found = new Map<string, StatedIn>();
  if (origin.from === "written" && origin.stated) found.set(origin.stated.path, origin.stated);
  if (origin.from === "step")
    for (const input of origin.step.inputs) for (const each of statedIn(input)) found.set(each.path, each);
  const all = found.size === 0 ? NOT_STATED : [...found.values()];
  statedBy.set(value, all);
  return all;
}

/** The steps that lead to a value, first things first, each once. */
export function workingOf(value: Known): readonly { readonly step: Step; readonly result: Known }[] {
  const lines: { step: Step; result: Known }[] = [];
  const seen = new Set<Step>();
  const visit = (each: Known): void => {
    if (each.origin.from !== "step" || seen.has(each.origin.step)) return;
    seen.add(each.origin.step);
    for (const input of each.origin.step.inputs) visit(input);
    lines.push({ step: each.origin.step, result: each });
  };
  visit(value);
  return lines;
}
