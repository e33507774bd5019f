import type { Value } from "@plumbmark/calc";
import {
  atMost,
  type Bar,
  type Hang,
  is,
  open,
  type RawCheck,
  rule,
  type SlackCases,
  type Thing,
} from "@plumbmark/kit";

type Solved = Extract<SlackCases, { readonly known: true }>;

/** Whichever hang is slack, two have to be left with the middle of the load between them. */
const mendOf = (bar: Bar): string =>
  `${
    bar.hangs.length === 3
      ? "Hang the bar on four, two on each side of the middle of the load: three do only where the middle one is right at it"
      : "Add a hang, or move hangs, so that two stand on each side of the middle of the load"
  }. Moving the outer hangs further out does not help. Until then level the bar, measure the load of every hang with a load cell, and have a qualified rigger decide.`;

const tips = (bar: Bar, hang: Hang): RawCheck =>
  open(hang, {
    says: `${bar.label} cannot hang with ${hang.name} slack: all it carries is then on one side of the hangs that are left, and it tips down at ${hang.name} until that rope is taut again. What the others carry on the way cannot be told from the bar level.`,
    mend: mendOf(bar),
  });

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

function* worstOf({ worst }: Solved): Iterable<RawCheck> {
  for (const { hang, reaction, slackened } of worst)
    for (const { thing, load, what, allowed } of held(hang, reaction))
      yield atMost(thing, {
        measured: load,
        allowed,
        says: (words) => {
          const when = slackened ? `with ${slackened.name} slack` : "with every hang taut";
          return what === "structure"
            ? `${thing.label} and its hardware weigh ${words.measured} on the structure at worst, ${when}; it is rated ${words.allowed} there.`
            : `${thing.label} carries ${words.measured} at worst, ${when}; its ${what} is rated ${words.allowed}.`;
        },
        mend: "Add a hang, or take hardware of a higher WLL. A licensed engineer states what the structure carries.",
      });
}

export default rule({
  id: "rigging.slack-hang",
  states: "With any one hang slack, no other is over its rating.",
  level: "shall",
  why: "On three or more hangs the share of each depends on how level they are. A rope that is a finger's breadth too long carries nothing, and its neighbours carry its share.",
  judged:
    "The bar is solved again with each hang slack in turn; the worst reaction of every hang is held against its weakest part, and with the mass of its assembly against the structure at that point. A bar that tips without one of its hangs, because all it carries is on one side of the others, never passes.",
  sources: ["three-moment", "practice"],
  *checks({ build }) {
    for (const bar of build.bars) {
      const cases = bar.slackCases;
      if (!cases) continue;
      if (!cases.known) {
        yield atMost(bar, { measured: cases, allowed: cases, says: () => `${bar.label} cannot be solved.` });
        continue;
      }
      for (const hang of cases.unstable) yield tips(bar, hang);
      if (cases.unstable.length === 0)
        yield is(bar, { holds: true, says: `${bar.label} hangs still with any one hang slack.` });
      yield* worstOf(cases);
    }
  },
});
