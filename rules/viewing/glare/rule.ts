import { tabled } from "@plumbmark/calc";
import { atMost, rule } from "@plumbmark/kit";

export default rule({
  id: "viewing.glare",
  states: "Indoors the target luminance is no more than eyes take in a room.",
  level: "should",
  why: "A wall of tiles at full drive in a dark hall blinds the front rows, washes out whoever stands before it, and flashes hard enough to make people ill.",
  judged:
    "The target luminance of a build indoors against the setting. In daylight, outdoors or sheltered, nothing is judged. The setting is common practice, no source: houses of worship and theatres run at 200 to 600 cd/m², bright lobbies at up to 1,000.",
  sources: ["practice"],
  settings: {
    most: {
      us: 1000,
      iec: 1000,
      kind: "luminance",
      stricter: "less",
      describe: "most target luminance indoors, common practice, no source",
    },
  },
  *checks({ build, settings }) {
    if (build.faces.length === 0 || build.reader.text("exposure") !== "indoors") return;
    yield atMost(
      { path: "light", label: "The light" },
      {
        measured: build.viewing.target,
        allowed: tabled(Number(settings.most), "luminance", "practice", "most target luminance indoors"),
        says: ({ measured, allowed }) => `The target is ${measured}; indoors ${allowed} is the most.`,
        turns: { path: "light.target", sense: "at most" },
        mend: "Lower the target, or set `most` in the house standard for a room that is that bright.",
      },
    );
  },
});
