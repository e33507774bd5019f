import { METRES_PER_MM, practiceDistance, tabled } from "@plumbmark/calc";
import { atLeast, rule } from "@plumbmark/kit";

export default rule({
  id: "viewing.pitch",
  states: "The nearest viewer is far enough for the pitch.",
  level: "should",
  why: "From too near the eye sees single points of light instead of a picture, and text falls apart.",
  judged:
    "The distance of the nearest viewer against the true pitch, panel width divided by its pixels, times the metres for each millimetre that are set.",
  sources: ["practice", "geometry"],
  settings: {
    "metres-per-mm": {
      us: METRES_PER_MM,
      iec: METRES_PER_MM,
      stricter: "more",
      describe: "metres of distance for each millimetre of pitch",
    },
  },
  *checks({ build, settings }) {
    const k = tabled(settings["metres-per-mm"] as number, "factor", "practice", "metres for each millimetre of pitch");
    for (const face of build.faces)
      yield atLeast(face, {
        measured: build.viewing.nearestTo(face),
        allowed: practiceDistance.of({ p: face.pitch, k }),
        says: ({ measured, allowed }) =>
          `The nearest viewer of face ${face.name} is ${measured} away; its pitch asks for ${allowed}.`,
        turns: { path: "audience.nearest", sense: "at least" },
        mend: "Keep the first row farther away, or take a panel of finer pitch.",
      });
  },
});
