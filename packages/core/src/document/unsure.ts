import { type Known, marked, type Quantity, type Sure } from "@plumbmark/calc";
import type { Place } from "./place.js";
import { plausibleEnds } from "./plausible.js";
import type { Data } from "./yaml/yaml.js";

/** A value that is written as a guess or as a bound. */
export interface Unsure {
  readonly path: string;
  readonly place: Place;
  readonly sure: Sure;
  /** As it is written. */
  readonly text: string;
  /** Of a bound: the other end of what is possible, in the unit its kind is kept in. */
  readonly other?: number;
}

/** Nothing, for what no formula takes a nought of. */
const NEXT_TO_NOTHING = 1e-6;

/**
 * The other end of what a bound leaves possible: nothing, or what its field gives as least and most.
 * @returns undefined where there is none, and `at least` says nothing that could be held against anything
 */
export function otherEnd(
  { value, kind }: Quantity,
  sure: Sure,
  range: readonly [string, string] | undefined,
): number | undefined {
  const [least, most] = range ? plausibleEnds(kind, range) : [0, kind === "ratio" ? 1 : Number.NaN];
  const end = sure === "at most" ? Math.max(least, value * NEXT_TO_NOTHING) : most;
  return Number.isFinite(end) ? end : undefined;
}

/** `6 ?` where a whole number belongs. */
export function wholeGuess(data: Data): number | undefined {
  if (typeof data !== "string") return undefined;
  const { text, sure } = marked(data);
  return sure === "guess" && /^\d{1,9}$/u.test(text) ? Number(text) : undefined;
}

/** Steps of a path that the next key takes: a name may have points in it. */
function takenBy(here: object, left: readonly string[]): number {
  if (Array.isArray(here)) return 1;
  const taken = left.findIndex((_, index) => Object.hasOwn(here, left.slice(0, index + 1).join(".")));
  return taken < 0 ? 1 : taken + 1;
}

/** The data with another value at a path, or without it; everything else is the same. */
export function withAt(data: Data, path: string, value: Data | undefined): Data {
  const put = (here: Data | undefined, left: readonly string[]): Data | undefined => {
    if (left.length === 0) return value;
    if (here === null || here === undefined || typeof here !== "object") return here;
    const taken = takenBy(here, left);
    const key = left.slice(0, taken).join(".");
    const rest = left.slice(taken);
    if (Array.isArray(here)) {
      const list = [...(here as readonly Data[])];
      list[Number(key) - 1] = put(list[Number(key) - 1], rest) ?? null;
      return list;
    }
    const group = Object.assign(Object.create(null), here) as Record<string, Data>;
    const inner = put(group[key], rest);
    if (inner === undefined) delete group[key];
    else group[key] = inner;
    return group;
  };
  return put(data, path.split(".")) ?? null;
}

/** What is taken for written in place of what is: values that are left out, and others that are put in their place. */
export interface World {
  /** Paths of the document; of a part its name stands in front. */
  readonly without: ReadonlySet<string>;
  /** Values by path, in the unit their kind is kept in. */
  readonly instead: ReadonlyMap<string, number>;
}

/** Data and quantities as they are in a world. */
export function inWorld(
  { data, values }: { readonly data: Data; readonly values: ReadonlyMap<string, Known> },
  { without, instead }: World,
): { readonly data: Data; readonly values: ReadonlyMap<string, Known> } {
  let changed = data;
  const made = new Map(values);
  for (const path of without) {
    changed = withAt(changed, path, undefined);
    for (const half of ["", ".1", ".2"]) made.delete(`${path}${half}`);
  }
  for (const [path, value] of instead) {
    const known = made.get(path);
    if (known) made.set(path, { ...known, value });
  }
  return { data: changed, values: made };
}
