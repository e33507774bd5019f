import { leastOf, type Value } from "@plumbmark/calc";
import { atMost, type Bar, type Hang, is, open, type RawCheck, rule } from "@plumbmark/kit";
import { overPeople } from "../over-people.js";

/** What breaks first of an assembly, or of the legs of a bridle, and what of a peak counts there. */
const strengths = (hang: Hang) =>
  hang.strands.map(({ assembly, load, path, label }) => ({
    thing: { path, label },
    load,
    breaking: leastOf(
      assembly.parts.map((part) => assembly.strengthOf(part)),
      "mass",
      "breaking strength",
    ),
  }));

function* jerk(bar: Bar, lost: Hang, hang: Hang, peak: Value): Iterable<RawCheck> {
  for (const { thing, load, breaking } of strengths(hang))
    yield atMost(thing, {
      measured: load(peak),
      allowed: breaking,
      says: (words) =>
        `${thing.label} swings up to ${words.measured} when ${lost.name} is lost; its weakest part breaks at ${words.allowed}.`,
      mend: "Take hardware of a higher breaking strength, or add hangs.",
    });
  if (hang.bridled)
    for (const leg of hang.legs)
      yield atMost(leg, {
        measured: leg.onStructure(leg.tension(peak)),
        allowed: leg.catching,
        says: (words) =>
          `${leg.label} pulls the structure with ${words.measured} when ${lost.name} is lost; it bears ${words.allowed} there.`,
        mend: "Have a licensed engineer state what the structure bears when a load is caught there (`catch`).",
      });
  else
    yield atMost(hang, {
      measured: hang.onStructure(peak),
      allowed: hang.catching,
      says: (words) =>
        `${hang.label} puts ${words.measured} on the structure when ${lost.name} of bar ${bar.name} is lost; it bears ${words.allowed} there.`,
      mend: "Have a licensed engineer state what the structure bears when a load is caught there (`catch`), or add hangs.",
    });
}

function* ofBar(bar: Bar): Iterable<RawCheck> {
  const { losses, second } = bar;
  if (!("length" in losses)) {
    yield atMost(bar, { measured: losses, allowed: losses, says: () => `${bar.label} cannot be solved.` });
    return;
  }
  for (const { lost, tips, peaks } of losses) {
    const caught = second?.isAt(lost) ?? false;
    yield is(lost, {
      holds: !tips || caught,
      says: !tips
        ? `${bar.label} hangs on without ${lost.name}.`
        : caught
          ? `${bar.label} tips without ${lost.name}, and the second suspension catches it there.`
          : `${bar.label} tips when ${lost.name} is lost: the middle of its load is then not between the hangs that are left.`,
      mend: `Add hangs so that two are left on each side of the middle of the load, or write a second suspension at each hang under \`${bar.path}.second\`.`,
    });
    for (const { hang, peak } of peaks) yield* jerk(bar, lost, hang, peak);
  }
}

export default rule({
  id: "rigging.lost-hang",
  states: "With any one hang gone the bar does not tip, and the others hold what they swing up to.",
  level: "shall",
  why: "A clamp that slips or a shackle that opens is one hang gone, at once. What is left swings, and a bar on two hangs falls at one end.",
  judged:
    "Each hang is taken away in turn. The bar stays up only if the middle of its load lies strictly between the outer hangs that are left: right under one is no hold. Where it tips, a second suspension has to be at that hang; whether it holds is judged by rigging.secondary. What the others come to carry at rest is inside what rigging.slack-hang judges. On the way there they swing: the peak is 2 × R after − R before, of the level bar, elastic and not damped. It is held against the breaking strength of the weakest part, a rope's with its termination, and with the mass of the hang against what the structure bears when a load is caught there, else its rating. Over people this is a requirement, else a recommendation.",
  sources: ["statics", "sudden-load", "dguv-17-7", "practice"],
  *checks({ build }) {
    const over = overPeople(build);
    if (build.bars.length === 0) return;
    if (over === undefined)
      yield open(
        { path: "rigging", label: "The rigging" },
        {
          says: "Whether people are below is not written down.",
          mend: "Write `over-people: true` or `over-people: false` under `rigging`.",
          needs: ["rigging.over-people"],
        },
      );
    for (const bar of build.bars)
      for (const each of ofBar(bar)) yield over === false ? { ...each, level: "should" } : each;
  },
});
