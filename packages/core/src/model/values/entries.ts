import type { Value } from "@plumbmark/calc";

/** Values by the end of their path, each computed when it is asked for; what does not apply is undefined and left out. */
export type OwnValues = Readonly<Record<string, () => Value | undefined>>;

export type ValueEntry = readonly [path: string, value: () => Value | undefined];

/** Values of one thing, each at its full path. */
export const under = (path: string, own: OwnValues): readonly ValueEntry[] =>
  Object.entries(own).map(([key, value]) => [`${path}.${key}`, value]);

/** Numbered things of one path, from 1: `power.runs.P1.segments.2`. */
export const numbered = <Item>(
  path: string,
  items: readonly Item[],
  own: (item: Item) => OwnValues,
): readonly ValueEntry[] => items.flatMap((item, index) => under(`${path}.${index + 1}`, own(item)));
