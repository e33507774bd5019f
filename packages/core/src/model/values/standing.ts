import { ballastNeeded, tabled, type Value } from "@plumbmark/calc";
import type { Build } from "../build.js";
import type { Stand } from "../stand.js";
import { type Entry, under } from "./entries.js";
import { settingOf } from "./setting.js";

/** Push of the rule rigging.stack-stability where the house standard sets none: pascals up to 4 m, and the share above. */
const PUSH = { us: 239.4, iec: 125 } as const;
const SHARE_ABOVE = 0.504;
const FACTOR = 1.5;

/** Ballast that gives the required factor, everything else as it is. */
function ballastFor(stand: Stand, Mo: Value, factor: number): Value<"mass"> {
  const without = stand.restoringWithout;
  return ballastNeeded.of({
    γ: tabled(factor, "factor", "overturning-1.5", "required factor"),
    Mo,
    Mr: without,
    xb: stand.ballastArm,
  });
}

export const standValues = (build: Build): readonly Entry[] =>
  build.faces.flatMap(({ stand }) => {
    if (!stand) return [];
    const low = settingOf(build, "rigging.stack-stability", "push") ?? PUSH[build.practice];
    const onDeck = settingOf(build, "rigging.deck-load", "push") ?? PUSH[build.practice];
    const factor = settingOf(build, "rigging.stack-stability", "factor") ?? FACTOR;
    const overturning = stand.overturning(low, low * SHARE_ABOVE);
    return under(stand.path, {
      mass: stand.mass,
      overturning,
      restoring: stand.restoring,
      "overturning-factor": stand.factor(low, low * SHARE_ABOVE),
      "ballast-needed": ballastFor(stand, overturning, factor),
      "deck-pressure": stand.pressure,
      "foot-load": stand.footLoad(onDeck, onDeck * SHARE_ABOVE),
    });
  });
