import { shareOf } from "@plumbmark/calc";
import { type SharedThing, sharedThings } from "../shared/shared-thing.js";
import type { SharedKind } from "../shared/use.js";
import type { CountedDesign } from "./counted-design.js";
import { under, type ValueEntry } from "./entries.js";

/** Names of the groups, as they are quoted. */
const GROUPS: Readonly<Record<SharedKind, string>> = {
  circuit: "circuits",
  supply: "supplies",
  outlets: "outlets",
  point: "points",
  structure: "structures",
  processor: "processors",
  item: "items",
  lot: "lots",
};

/** Names as one step of a path: `front-beam.F1` is `front-beam-F1`, 25 ft of `cord` are `cord-25-ft`. */
const pathOf = ({ of, name, which }: SharedThing): string => {
  const words = which === undefined ? name : `${name} ${which}`;
  return `shared.${GROUPS[of]}.${words.replace(/[^A-Za-z0-9_-]+/gu, "-")}`;
};

/** Of everything the build uses and others may use, too: what all use on its fullest day, and what there is. */
export const sharedValues = (build: CountedDesign): readonly ValueEntry[] =>
  sharedThings(build, ...(Object.keys(GROUPS) as SharedKind[])).flatMap((thing) =>
    under(pathOf(thing), {
      used: () => thing.worst(thing.counted).total,
      /** With drafts and builds without days besides, where there are any. */
      wanted: () => (thing.leftOut.length === 0 ? undefined : thing.worst([...thing.counted, ...thing.leftOut]).total),
      allowed: () => thing.allowed,
      share: () => shareOf(thing.worst(thing.counted).total, thing.allowed),
    }),
  );
