import { THREE_MOMENT_WORDS, type Value } from "@plumbmark/calc";
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
      ? "Hang the bar on four, two on each side of the middle of the load: three never do"
      : "Add a hang, or move hangs, so that two stand on each side of the middle of the load"
  }. Moving the outer hangs further out does not help. Until then level the bar, measure the load of every hang with a load cell, and have a qualified rigger decide.`;

const tips = (bar: Bar, hang: Hang): RawCheck =>
  open(hang, {
    says: `${bar.label} cannot hang with ${hang.name} slack: the middle of all it carries is then not between the hangs that are left, and it tips down at ${hang.name} until that rope is taut again, or is balanced on one rope. What the others carry on the way cannot be told from the bar level.`,
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
  for (const { hang, reaction, when } of worst)
    for (const { thing, load, what, allowed } of held(hang, reaction))
      yield atMost(thing, {
        measured: load,
        allowed,
        says: (words) => {
          const inCase = when.trim() || "with every hang taut";
          return what === "structure"
            ? `${thing.label} and its hardware weigh ${words.measured} on the structure at worst, ${inCase}; it is rated ${words.allowed} there.`
            : `${thing.label} carries ${words.measured} at worst, ${inCase}; its ${what} is rated ${words.allowed}.`;
        },
        mend: "Add a hang, or take hardware of a higher WLL. A licensed engineer states what the structure carries.",
      });
}

export default rule({
  id: "rigging.slack-hang",
  states: "With any one hang slack, no other is over its rating.",
  level: "shall",
  why: "On three or more hangs the share of each depends on how level they are. A rope that is a finger's breadth too long carries nothing, and its neighbours carry its share.",
  judged: `The bar is solved again with each hang slack in turn, under everything that hangs on it (rigging.suspended-weight says what, and where it acts). A rope only pulls: a hang that would have to push is slack, too, and the bar is solved again without it, so that the check may read “with H1 slack, and H3 then slack, too”. On the two hangs that are left the reaction is the moment of the loads about the other one over their distance. The worst reaction of every hang is held against its weakest part, and with the mass of its assembly against the structure at that point. The middle of the load has to fall between the hangs that are left, with something for each outermost one to carry: a bar that tips without one of its hangs, or is balanced right under one, is open and never passes. ${THREE_MOMENT_WORDS}.`,
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
