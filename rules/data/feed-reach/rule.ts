import { rule } from "@plumbmark/kit";
import { reaches, reachSettings, WAY } from "../../venue/reach.js";

export default rule({
  id: "data.feed-reach",
  states: "The feed of a chain, and what closes its loop, is as long as its way between the processor and the panel.",
  level: "shall",
  why: "A signal cable that is too short is joined in the middle by whatever is at hand, and the joint is where the picture goes on the night.",
  judged: `In a venue that was surveyed: the length of a chain's feed, and of the cable that closes its loop, against the way from the processor's place to the chain's first panel, or back from its last, ${WAY} what is ordered. In a venue without a survey nothing is judged.`,
  sources: ["geometry", "house"],
  settings: reachSettings,
  *checks({ build }) {
    for (const { feed, feedWay, closing, returnWay, reachOf } of build.chains) {
      if (feedWay) yield* reaches({ cable: feed, way: feedWay, needed: reachOf(feedWay) });
      if (closing && returnWay) yield* reaches({ cable: closing, way: returnWay, needed: reachOf(returnWay) });
    }
  },
});
