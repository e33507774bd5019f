import { leastOf } from "@plumbmark/calc";
import { atMost, type Build, is, open, type RawCheck, rule } from "@plumbmark/kit";

const RIGGING = { path: "rigging", label: "The rigging" };
const SECOND = { path: "rigging.secondary", label: "The second suspension" };

/** The second suspension has to hold what the hang holds; the jerk of taking it over is what its slack is kept small for. */
function* strengths(build: Build): Iterable<RawCheck> {
  const weakest = leastOf(
    build.secondary.map(({ rating }) => rating),
    "mass",
    "WLL",
  );
  for (const hang of build.bars.flatMap((bar) => bar.hangs)) {
    const { reaction, when } = hang.worst;
    yield atMost(hang, {
      measured: reaction,
      allowed: weakest,
      says: ({ measured, allowed }) =>
        `${hang.label} carries ${measured}${when}; the weakest part of the second suspension is rated ${allowed}.`,
      mend: "Take a second suspension of a higher WLL, or add a hang.",
    });
  }
}

export default rule({
  id: "rigging.secondary",
  states: "Whatever hangs over people has a second, independent suspension.",
  level: "should",
  why: "One part that fails, or one shackle that was never closed, must not drop the load on anybody.",
  judged:
    "Whether `secondary` names parts, and whether each hang's load is inside the WLL of the weakest of them: with three or more hangs the worst load, with any one of the others slack.",
  sources: ["practice", "dguv-17-7", "dguv-215-313-2.1"],
  *checks({ build }) {
    const over = build.reader.data("rigging.over-people");
    if (over === false || (build.bars.length === 0 && !build.faces.some(({ support }) => support === "flown"))) return;
    if (over !== true)
      yield open(RIGGING, {
        says: "Whether people are below is not written down.",
        mend: "Write `over-people: true` or `over-people: false` under `rigging`.",
        needs: ["rigging.over-people"],
      });
    else if (build.reader.data("rigging.secondary") === undefined)
      yield open(RIGGING, {
        says: "No second suspension is written down.",
        mend: "Write its parts under `rigging.secondary`.",
        needs: ["rigging.secondary"],
      });
    else {
      const named = build.secondary.length > 0;
      yield is(SECOND, {
        holds: named,
        says: named
          ? `The second suspension is ${build.secondary.map(({ name }) => name).join(", ")}.`
          : "There is no second suspension over people.",
        mend: "Fit a second, independent suspension at each hang, with as little slack as it will take.",
      });
      if (named) yield* strengths(build);
    }
  },
});
