import { CABLE_ALLOWANCE } from "@plumbmark/calc";
import { rule } from "@plumbmark/kit";
import { reaches } from "../../venue/reach.js";

export default rule({
  id: "power.feed-reach",
  states: "The feed of a run is as long as its way from the outlet to the first panel.",
  level: "shall",
  why: "A feed that is ten feet short is found out when the truss is up, and what is then plugged in between lies in no drawing and in no voltage drop.",
  judged:
    "In a venue that was surveyed: the length of a run's feed against the way from the outlet of its circuit, `at` a place of the survey, to the run's first panel, × (1 + `share`) + `ends` for bends, ties and both ends. A way is known where it was measured, or where somebody looked and led it by places, straight from each to the next. To a face under a structure of the survey it goes to the end of that which is nearer, along it to the bar, down to the middle of the bar and along that to the middle of the panel's column; to any other face it goes to the place the face says it stands at. A way that is neither is the straight line: a cable that is shorter fails, and no other passes by it. A feed may leave its length out where the way is known and its part says in which `lengths` it comes: the shortest that reaches is taken, counted, and used for the voltage drop. In a venue without a survey nothing is judged.",
  sources: ["geometry", "house"],
  settings: {
    share: {
      us: CABLE_ALLOWANCE.share,
      iec: CABLE_ALLOWANCE.share,
      kind: "ratio",
      stricter: "more",
      describe: "allowance for bends and ties, as a share of the way",
    },
    ends: {
      us: CABLE_ALLOWANCE.ends,
      iec: CABLE_ALLOWANCE.ends,
      kind: "length",
      stricter: "more",
      describe: "allowance for both ends",
    },
  },
  *checks({ build }) {
    for (const { feed, feedWay, reach } of build.runs)
      if (feedWay) yield* reaches({ cable: feed, way: feedWay, needed: reach });
  },
});
