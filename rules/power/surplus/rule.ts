import { atMost, open, rule, sum, tabled } from "@plumbmark/kit";

export default rule({
  id: "power.surplus",
  states: "A feed is not much longer than its way.",
  level: "should",
  why: "What is left over of a cord is coiled behind the rack or stays on its drum, where it cannot cool. Cords have melted at the current they carry safely laid out.",
  judged:
    "In a venue that was surveyed, where the way was measured or led: the length of a run's feed less what its way asks for (power.feed-reach), against the setting. What is left over within it is laid out in flat loops, not coiled. The setting is common practice, no source; how much less a cord carries on its drum is on the drum.",
  sources: ["geometry", "practice"],
  settings: {
    most: { us: 25 * 0.3048, iec: 8, kind: "length", stricter: "less", describe: "most of a feed that is left over" },
  },
  *checks({ build, settings }) {
    const most = tabled(Number(settings.most), "length", "house", "most that is left over");
    for (const { feed, feedWay, reach } of build.runs) {
      if (!feedWay || !feed.written) continue;
      const thing = { path: `${feed.path}.length`, label: feed.label };
      if (!reach)
        yield open(thing, {
          says: `${feed.label}: how much of it is left over cannot be told, its way from ${feedWay.from} to ${feedWay.to} is not measured.`,
          mend: "Measure the way, or lead it by places: say `via` and who looked, under `routes` of the survey.",
          needs: ["routes"],
        });
      else
        yield atMost(thing, {
          measured: feed.length,
          allowed: sum([reach, most], "length", "way and what may be left over"),
          says: ({ measured, allowed }) =>
            `${feed.label} is ${measured}; its way from ${feedWay.from} to ${feedWay.to}, with all that may be left over, is ${allowed}.`,
          mend: "Take a shorter cord. Where there is none, lay what is left over out in flat loops with air around them, never on its drum.",
        });
    }
  },
});
