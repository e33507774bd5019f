import { greatestOf, leastOverturningFactor, notionalPush } from "@plumbmark/calc";
import type { Design } from "../design.js";
import type { Push } from "../faces/stand.js";
import { under, type ValueEntry } from "./entries.js";
import { settingNumber } from "./setting.js";

/** The push the house standard sets for the rule, or else that of the practice. */
const pushOf = (build: Design, rule: string): Push => ({
  low: settingNumber(build, rule, "push") ?? notionalPush[build.practice].low,
  high: settingNumber(build, rule, "push-above") ?? notionalPush[build.practice].high,
});

export const standValues = (build: Design): readonly ValueEntry[] =>
  build.faces.flatMap(({ stand }) => {
    if (!stand) return [];
    const push = pushOf(build, "rigging.stack-stability");
    const factor = settingNumber(build, "rigging.stack-stability", "factor") ?? leastOverturningFactor;
    return under(stand.path, {
      depth: () => stand.depth,
      footprint: () => (stand.footprint.known ? stand.footprint : undefined),
      mass: () => stand.mass,
      ballast: () => stand.ballast,
      overturning: () => stand.overturning(push),
      restoring: () => stand.restoring("toe"),
      "restoring-behind": () => stand.restoring("behind"),
      "overturning-factor": () => stand.factor(push, "toe"),
      "overturning-factor-behind": () => stand.factor(push, "behind"),
      "ballast-needed": () =>
        greatestOf([stand.ballastFor(push, factor, "toe"), stand.ballastFor(push, factor, "behind")], "mass", "mb"),
      "centre-of-weight": () => stand.centre,
      "deck-pressure": () => stand.pressure,
      "deck.rating": () =>
        stand.face.reader.optional(`${stand.path}.deck.rating`, "areal-load", "rating of the deck", stand.face.label),
      "foot-load": () => stand.footLoad(pushOf(build, "rigging.deck-load")),
    });
  });
