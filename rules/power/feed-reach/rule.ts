import { rule } from "@plumbmark/kit";
import { reaches, reachSettings, WAY } from "../../venue/reach.js";

export default rule({
  id: "power.feed-reach",
  states: "The feed of a run is as long as its way from the outlet to the first panel.",
  level: "shall",
  why: "A feed that is ten feet short is found out when the truss is up, and what is then plugged in between lies in no drawing and in no voltage drop.",
  judged: `In a venue that was surveyed: the length of a run's feed against the way from the outlet of its circuit, \`at\` a place of the survey, to the run's first panel, ${WAY} the voltage drop. In a venue without a survey nothing is judged.`,
  sources: ["geometry", "house"],
  settings: reachSettings,
  *checks({ build }) {
    for (const { feed, feedWay, reach } of build.runs)
      if (feedWay) yield* reaches({ cable: feed, way: feedWay, needed: reach });
  },
});
