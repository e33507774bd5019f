import type { Value } from "@plumbmark/calc";
import { atMost, type Bar, type Hang, is, type RawCheck, rule, type Thing } from "@plumbmark/kit";

/** What the hang, or each leg of its bridle, carries at worst, and what it is held against. */
const held = (hang: Hang, reaction: Value) => [
  ...hang.ratings.map(({ what, allowed, of }) => ({ thing: hang as Thing, load: of(reaction), what, allowed })),
  ...hang.legs.flatMap((leg) =>
    leg.ratings.map(({ what, allowed, of }) => ({
      thing: leg as Thing,
      load: of(leg.tension(reaction)),
      what,
      allowed,
    })),
  ),
];

function* worstOf(hang: Hang): Iterable<RawCheck> {
  const { reaction, when } = hang.worst;
  const inCase = /^(?:,|$)/u.test(when) ? `with every hang taut${when}` : when.trim();
  for (const { thing, load, what, allowed } of held(hang, reaction))
    yield atMost(thing, {
      measured: load,
      allowed,
      says: (words) =>
        what === "structure"
          ? `${thing.label} and its hardware weigh ${words.measured} on the structure at worst, ${inCase}; it is rated ${words.allowed} there.`
          : `${thing.label} carries ${words.measured} at worst, ${inCase}; its ${what} is rated ${words.allowed}.`,
      turns:
        what === "structure" ? { path: `${thing.path}.structure`, sense: "at least", asks: "engineer" } : undefined,
      mend: "Take hardware of a higher WLL, or take load off the bar. A licensed engineer states what the structure carries.",
    });
}

function* ofBar(bar: Bar): Iterable<RawCheck> {
  const { stillness, hangs } = bar;
  if (!stillness.known) {
    yield atMost(bar, { measured: stillness, allowed: stillness, says: () => `${bar.label} cannot be solved.` });
    return;
  }
  yield is(bar, {
    holds: stillness.still,
    says: stillness.still
      ? `${bar.label} hangs still: the middle of all it carries lies between its outer hangs.`
      : `${bar.label} does not hang still: ${stillness.because}. It tips.`,
    mend: "Move the outer hangs, or what the bar carries, until the middle of all of it lies between them.",
  });
  // Two hangs share the load in one way only, which rigging.point-load judges.
  if (stillness.still && (hangs.length > 2 || bar.unplaced.length > 0)) for (const hang of hangs) yield* worstOf(hang);
}

export default rule({
  id: "rigging.slack-hang",
  states: "However its ropes share the load, the bar hangs still and no hang is over its rating.",
  level: "shall",
  why: "On three or more hangs the share of each depends on how level they are. A rope that is a finger's breadth too long carries nothing, and two of the others carry all of it.",
  judged:
    "Ropes pull and never push, so every reaction is nothing or more, together they are all that hangs (rigging.suspended-weight says what, and where it acts), and their moments balance about the middle of it. Whatever the stiffness of the bar and the lengths of the ropes, the worst of every hang and the worst bending then lie where only two hangs carry, one on each side of the middle of the load, or the one right at it: R = W × (distance of the other hang from the middle) ÷ (distance of the two). A hang that is lost is one of these cases. The worst reaction of every hang is held against its weakest part, and with the mass of its assembly against the structure at that point; bending is judged by rigging.bar-strength in the same cases. A bar whose middle of load is not between its outer hangs, or is right under one, tips. Other mass on the bar without a place counts where it is worst. With `cases: length-error`, and only on a bar that says how level its ropes are and who made them so (`levelled: {within: 6 mm, by: …}`), the worst is taken over all sets of ropes that are too long or too short by that much instead, for a bar of its own stiffness on ropes that do not stretch; what ropes and structure give has to be inside the error that is written. Deflection is that of the level bar.",
  sources: ["statics", "three-moment", "practice"],
  settings: {
    cases: {
      us: "any-balance",
      iec: "any-balance",
      describe: "`any-balance`, or `length-error` for bars whose ropes are levelled to a figure",
      schema: { enum: ["any-balance", "length-error"] },
    },
  },
  *checks({ build }) {
    for (const bar of build.bars) yield* ofBar(bar);
  },
});
