import { assumedWithin, cordMass, type Known, printNumber } from "@plumbmark/calc";
import type { Place } from "../document/place.js";
import { START } from "../document/place.js";
import type { Unsure } from "../document/unsure.js";
import type { Data } from "../document/yaml/yaml.js";

/** What of a part is assumed: the end that is computed with, and the other one. */
export interface Assumed {
  readonly path: string;
  readonly value: Known;
  readonly unsure: Unsure;
}

/** An entry of the catalogue as it was read. */
interface Entry {
  readonly name: string;
  readonly data: Readonly<Record<string, Data>>;
  readonly quantities: ReadonlyMap<string, Known>;
  readonly unsure: readonly Unsure[];
}

/** Interval of the mass per length of a cord; undefined where its part does not say what a table asks for. */
export function cordInterval({ data, quantities, unsure }: Omit<Entry, "name">): ReturnType<typeof cordMass> {
  const { kind, jacket, conductors } = data;
  const conductor = quantities.get("conductor");
  if (kind !== "power-cable" || typeof jacket !== "string" || typeof conductors !== "number") return undefined;
  // An interval that rests on a guess is none of a source.
  if (!conductor || unsure.some(({ path }) => path === "conductor" || path === "conductors")) return undefined;
  return cordMass(jacket, conductor.value, conductors);
}

/**
 * What nobody wrote of a part and a source gives an interval for. Only masses that are added are assumed: never a
 * strength, a rating, or anything that helps. It is computed with the greater end, and looked at again at the other.
 */
export function assumedOf(entry: Entry, place: Place = START): Assumed | undefined {
  if (entry.data.mass !== undefined) return undefined;
  const interval = cordInterval(entry);
  if (!interval) return undefined;
  const [least, most] = interval;
  const number = (value: number): string => printNumber(value, 2);
  const text = `${number(least.value)} kg/m to ${number(most.value)} kg/m`;
  const why = `assumed, for none is written: from ${number(least.value)} to ${number(most.value)} kg/m`;
  return {
    path: "mass",
    value: assumedWithin(most, `${entry.name}.mass`, "cord-mass", why),
    unsure: { path: "mass", place, sure: "assumed", text: `assumed, ${text}`, other: least.value },
  };
}
