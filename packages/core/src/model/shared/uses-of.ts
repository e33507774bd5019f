import type { Value } from "@plumbmark/calc";
import { guessesIn } from "@plumbmark/calc";
import { once } from "../reading/once.js";
import { circuitUses, outletUses, supplyUses } from "./circuit-uses.js";
import { itemUses } from "./item-uses.js";
import { processorUses } from "./processor-uses.js";
import type { SharedDesign } from "./shared-design.js";
import { pointUses, structureUses } from "./structure-uses.js";
import { type OwnUse, type SharedUse, sharedKey } from "./use.js";
import { sharedVenue } from "./venue.js";

/** Everything a build uses that others may use, too; of one thing each use. */
export const usesOf = (build: SharedDesign): readonly OwnUse[] =>
  once(build, "shared uses", () => {
    const venue = sharedVenue(build.reader.data("venue"));
    const here =
      venue === undefined
        ? []
        : [circuitUses, outletUses, supplyUses, pointUses, structureUses].flatMap((each) => each(build, venue));
    return [...here, ...processorUses(build, venue), ...itemUses(build, venue)];
  });

const figure = (value: number): number => Number(value.toPrecision(9));

const known = (values: Readonly<Record<string, Value>>): Readonly<Record<string, number>> => {
  const entries = Object.entries(values);
  return entries.every(([, value]) => value.known)
    ? Object.fromEntries(entries.map(([leg, value]) => [leg, value.known ? figure(value.value) : 0]))
    : {};
};

/** A use as plain data. */
export function plainUse({ amounts, beside, allowed, label: _, ...rest }: OwnUse): SharedUse {
  const values = [...Object.values(amounts), ...(beside ? [beside] : [])];
  return {
    ...rest,
    amounts: beside && !beside.known ? {} : known(amounts),
    ...(beside?.known ? { beside: figure(beside.value) } : {}),
    ...(allowed.known ? { allowed: figure(allowed.value) } : {}),
    ...(values.some((value) => guessesIn(value).size > 0) ? { guess: true as const } : {}),
  };
}

/** Uses of a build by what they are of: a bar with two hangs at one point bears on it twice. */
export function ownUsesBy(build: SharedDesign): ReadonlyMap<string, readonly OwnUse[]> {
  const by = new Map<string, OwnUse[]>();
  for (const use of usesOf(build)) {
    const key = sharedKey(use);
    const own = by.get(key);
    if (own) own.push(use);
    else by.set(key, [use]);
  }
  return by;
}
