import type { Value } from "@plumbmark/calc";
import { guessesIn } from "@plumbmark/calc";
import { onceAcross } from "../reading/once.js";
import { circuitUses, outletUses, supplyUses } from "./circuit-uses.js";
import { itemUses } from "./item-uses.js";
import { processorUses } from "./processor-uses.js";
import type { SharedDesign } from "./shared-design.js";
import { pointUses, structureUses } from "./structure-uses.js";
import { type OwnUse, type SharedName, type SharedUse, sharedKey } from "./use.js";
import { sharedVenue } from "./venue.js";

type UsesHere = (build: SharedDesign, venue: string) => readonly OwnUse[];

/** What belongs to the venue is nobody's where the document names none. */
const atVenue =
  (uses: UsesHere) =>
  (build: SharedDesign, venue: string | undefined): readonly OwnUse[] =>
    venue === undefined ? [] : uses(build, venue);

const USES: readonly (readonly [
  SharedName["of"],
  (build: SharedDesign, venue: string | undefined) => readonly OwnUse[],
])[] = [
  ["circuit", atVenue(circuitUses)],
  ["outlets", atVenue(outletUses)],
  ["supply", atVenue(supplyUses)],
  ["point", atVenue(pointUses)],
  ["structure", atVenue(structureUses)],
  ["processor", processorUses],
  ["item", itemUses],
];

/** Kinds of what is shared, in the order in which it is told. */
export const KINDS_SHARED: readonly SharedName["of"][] = USES.map(([of]) => of);

/** What a build uses of some kinds that others may use, too; of one thing each use. All kinds when none is named. */
export const usesOf = (build: SharedDesign, kinds: readonly SharedName["of"][] = KINDS_SHARED): readonly OwnUse[] =>
  USES.filter(([of]) => kinds.includes(of)).flatMap(([of, uses]) =>
    onceAcross(build, `shared ${of}`, () => uses(build, sharedVenue(build.reader.data("venue")))),
  );

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

/** Uses of one kind by what they are of: a bar with two hangs at one point bears on it twice. */
export function ownUsesBy(build: SharedDesign, kind: SharedName["of"]): ReadonlyMap<string, readonly OwnUse[]> {
  const by = new Map<string, OwnUse[]>();
  for (const use of usesOf(build, [kind])) {
    const key = sharedKey(use);
    const own = by.get(key);
    if (own) own.push(use);
    else by.set(key, [use]);
  }
  return by;
}
