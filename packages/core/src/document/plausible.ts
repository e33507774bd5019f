import { GRAVITY, type Kind, type Quantity, readQuantity } from "@plumbmark/calc";
import type { Place } from "./place.js";

/** A value that can be read and is not of the size its field has: `1e300 lb` for the rating of a beam. */
export interface Implausible {
  readonly path: string;
  readonly place: Place;
  /** As it is written. */
  readonly text: string;
  /** What the field is called. */
  readonly title: string | undefined;
  /** Least and most that are plausible, as the schema writes them. */
  readonly range: readonly [string, string];
}

/** Kinds a bound may be written in for another: a rating in kilonewtons is weighed against kilograms. */
const SHARED: readonly (readonly Kind[])[] = [
  ["mass", "force"],
  ["power", "apparent-power"],
  ["ratio", "voltage"],
];

const bounds = new Map<string, Quantity>();

/** A bound of the schema, read once. */
function boundOf(text: string, kind: Kind): Quantity {
  const key = `${kind} ${text}`;
  const known = bounds.get(key);
  if (known) return known;
  const reading = readQuantity(text, SHARED.find((group) => group.includes(kind)) ?? [kind]);
  if (!reading.ok) throw new Error(`the schema gives \`${text}\` as a plausible bound of ${kind}`);
  bounds.set(key, reading.quantity);
  return reading.quantity;
}

/** The value of a bound in the kept unit of `kind`; no number where the two cannot be compared. */
function sizeIn(bound: Quantity, kind: Kind): number {
  if (bound.kind === kind || kind === "power" || kind === "apparent-power") return bound.value;
  if (kind === "force" && bound.kind === "mass") return bound.value * GRAVITY;
  if (kind === "mass" && bound.kind === "force") return bound.value / GRAVITY;
  return Number.NaN;
}

/** Least and most of a field in the kept unit of a kind; no numbers where the two cannot be compared. */
export const plausibleEnds = (kind: Kind, [least, most]: readonly [string, string]): readonly [number, number] => [
  sizeIn(boundOf(least, kind), kind),
  sizeIn(boundOf(most, kind), kind),
];

/** Whether a quantity lies between the bounds of its field, the bounds themselves included. */
export function isPlausible({ kind, value }: Quantity, [least, most]: readonly [string, string]): boolean {
  const [low, high] = [least, most].map((text) => sizeIn(boundOf(text, kind), kind)) as [number, number];
  return !(value < low || value > high);
}
