import { CABLE_ALLOWANCE } from "@plumbmark/calc";
import { rule } from "@plumbmark/kit";
import { reaches } from "../../venue/reach.js";

export default rule({
  id: "data.feed-reach",
  states: "The feed of a chain, and what closes its loop, is as long as its way between the processor and the panel.",
  level: "shall",
  why: "A signal cable that is too short is joined in the middle by whatever is at hand, and the joint is where the picture goes on the night.",
  judged:
    "In a venue that was surveyed: the length of a chain's feed, and of the cable that closes its loop, against the way from the processor's place to the chain's first panel, or back from its last, × (1 + `share`) + `ends` for bends, ties and both ends. A way is known where it was measured, or where somebody looked and led it by places, straight from each to the next. To a face under a structure of the survey it goes to the end of that which is nearer, along it to the bar, down to the middle of the bar and along that to the middle of the panel's column; to any other face it goes to the place the face says it stands at. A way that is neither is the straight line: a cable that is shorter fails, and no other passes by it. A feed may leave its length out where the way is known and its part says in which `lengths` it comes: the shortest that reaches is taken, counted, and used for what is ordered. In a venue without a survey nothing is judged.",
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
    for (const { feed, feedWay, closing, returnWay, reachOf } of build.chains) {
      if (feedWay) yield* reaches({ cable: feed, way: feedWay, needed: reachOf(feedWay) });
      if (closing && returnWay) yield* reaches({ cable: closing, way: returnWay, needed: reachOf(returnWay) });
    }
  },
});
