import { atMost, rule } from "@plumbmark/kit";
import { pushOf, pushSettings } from "../notional-push.js";

export default rule({
  id: "rigging.deck-load",
  states: "Pressure and foot loads are inside the deck's rating.",
  level: "shall",
  why: "A deck carries a crowd spread out, and gives way under one loaded foot between its legs.",
  judged:
    "Everything that stands on the footprint against the deck rating, and the heaviest foot under the notional push against its rating under one foot. Feet stand in two rows of as many, at the edges of the base, and the weight where the distances of panels, base and ballast put it; along a row all feet bear alike. Of more rows, or rows that are not alike, the check is open.",
  sources: ["part", "statics", "messe-stand-building", "ibc-1607.13"],
  settings: {
    ...pushSettings,
  },
  *checks({ build, settings }) {
    const push = pushOf(settings);
    for (const { stand, label, name } of build.faces)
      if (stand) {
        yield atMost(stand, {
          measured: stand.pressure,
          allowed: stand.deckRating,
          says: ({ measured, allowed }) =>
            `${label} and its base press on the deck with ${measured}; it is rated ${allowed}.`,
          turns: { path: `${stand.path}.ballast`, sense: "at most" },
          mend: "Spread the load over a larger footprint, or take a deck of a higher rating.",
        });
        yield atMost(stand, {
          measured: stand.footLoad(push),
          allowed: stand.footRating,
          says: ({ measured, allowed }) =>
            `The heaviest foot of face ${name} bears ${measured}; the deck is rated ${allowed} under one foot.`,
          mend: "Add feet or plates below them, or have the deck's maker state a higher rating.",
        });
      }
  },
});
