import { atMost, type Bar, open, type RawCheck, rule } from "@plumbmark/kit";
import { otherLoadTurns } from "../other-load.js";

const MEND = "Add a hang, bring the hangs closer together, or take a stronger section.";

/** A section of one strength everywhere, or the moment its maker states for every case. */
function bySection(bar: Bar): RawCheck {
  const { moment, when } = bar.worstMoment;
  return atMost(bar, {
    measured: moment,
    allowed: bar.section.allowable,
    sources: [bar.section.allowableSource],
    says: ({ measured, allowed }) => `${bar.label} is bent with ${measured}${when}; its section may carry ${allowed}.`,
    turns: otherLoadTurns(bar),
    mend: MEND,
  });
}

/** What its maker states for every case counts where the case is none of the table's. */
function* byStatement(bar: Bar): Iterable<RawCheck> {
  yield bySection(bar);
  const { statedShear } = bar.section;
  if (statedShear)
    yield atMost(bar, {
      measured: bar.worstShear,
      allowed: statedShear,
      sources: ["part"],
      says: ({ measured, allowed }) => `${bar.label} is sheared with ${measured}; its maker states ${allowed}.`,
      mend: MEND,
    });
  else
    yield open(bar, {
      says: `${bar.label}: its maker's load table does not tell of this case, and the shear it may carry is not stated.`,
      mend: "Enter what its maker states for this case under `allowable-shear`.",
      needs: [`${bar.path}.section`],
    });
}

/** A truss by its maker's table; what the table is not about is for the maker to say. */
function* byTable(bar: Bar): Iterable<RawCheck> {
  const table = bar.tableLimits;
  if (!table.known && bar.section.statedMoment) yield* byStatement(bar);
  else if (!table.known)
    yield open(bar, {
      says: table.gaps[0]?.because ?? `${bar.label}: its maker's load table does not tell of this case.`,
      mend: "Hang it on two hangs as its table has it, or enter what its maker states for this case: `allowable-moment` and `allowable-shear`, or the `overhang` its table lets.",
      needs: table.gaps.map(({ path }) => path),
    });
  else {
    yield atMost(bar, {
      measured: bar.worstMoment.moment,
      allowed: table.moment,
      sources: ["part", "truss-tables"],
      says: ({ measured, allowed }) =>
        `${bar.label} is bent with ${measured}${bar.worstMoment.when}; by its maker's load table it may carry ${allowed}.`,
      mend: MEND,
    });
    yield atMost(bar, {
      measured: bar.worstShear,
      allowed: table.shear,
      sources: ["part", "truss-tables"],
      says: ({ measured, allowed }) =>
        `${bar.label} is sheared with ${measured}; by its maker's load table it may carry ${allowed}.`,
      mend: MEND,
    });
  }
}

export default rule({
  id: "rigging.bar-strength",
  states: "Bending in the bar stays inside the allowable; a truss stays inside its maker's load table.",
  level: "shall",
  why: "A pipe that bends past its yield stays bent, and a bent pipe lets its collars slide. A truss that is overloaded lets go at a weld, without bending first.",
  judged:
    "The greatest bending moment of the bar under everything that hangs on it (rigging.suspended-weight says what, and where it acts) against what its section may carry: yield × plastic modulus ÷ 1.67 for pipe (ANSI/AISC 360-22, F8), ÷ 1.65 for scaffold tube (TG20:13, 5.6), or the moment its maker states. The worst over all balances counts, sagging and hogging: on the outer two hangs alone the bar is one span, on an inner one alone it is bent over it (rigging.slack-hang). A part with its maker's load table (`loads`) is judged by it where the case is the table's: one span on two hangs, with no more beyond them than the `overhang` its maker lets. The row of the next longer span is read; its loads, put on the span there is, give the least moment and the shear they prove, and the bar's own mass counts with the load, the safe side. Hogging, a third hang, a longer overhang and a longer span than the last row are open, unless its maker states `allowable-moment` and `allowable-shear` for them. No design factor is added to a table: it is inside it.",
  sources: ["aisc-360-f8", "tg20-5.6", "truss-tables", "part"],
  *checks({ build }) {
    for (const bar of build.bars)
      if (bar.section.hasLoadTable) yield* byTable(bar);
      else yield bySection(bar);
  },
});
