import { beats, type Known, tabled } from "@plumbmark/calc";
import { atLeast, is, open, rule } from "@plumbmark/kit";

export default rule({
  id: "viewing.camera",
  states: "A camera that films a face sees whole refreshes of it, at a rate that does not beat with its own.",
  level: "should",
  why: "What looks even to the eye shows bands on the camera that wander through the picture, and the first to see them are those who watch the stream.",
  judged:
    "Whole refreshes of the panel in one exposure, floor(refresh × exposure), against the setting; and whether the camera's frame rate, the panel's refresh and the picture's rate divide one another. `camera: none` where nobody films. All of it is common practice: a test with the camera decides.",
  sources: ["camera-practice"],
  settings: {
    refreshes: {
      us: 8,
      iec: 8,
      stricter: "more",
      describe: "least number of whole refreshes of a panel in one exposure",
    },
  },
  *checks({ build, settings }) {
    const { reader, filming, faces, picture } = build;
    if (faces.length === 0) return;
    const thing = { path: "camera", label: build.label };
    if (reader.isNone("camera")) yield is(thing, { holds: true, says: "No camera films the faces." });
    if (!reader.has("camera"))
      yield open(thing, {
        says: "Whether a camera films the faces is not written down.",
        mend: "Write `camera: none`, or its rate and shutter: `camera: {rate: 25 Hz, shutter: 1/50 s}`.",
        needs: ["camera"],
      });
    for (const film of filming) {
      const { face, refreshes, refresh, rate } = film;
      yield atLeast(film, {
        measured: refreshes,
        allowed: tabled(settings.refreshes as number, "count", "house", "least whole refreshes in one exposure"),
        says: ({ measured, allowed }) =>
          `Face ${face.name} refreshes ${measured} times in one exposure of the camera; ${allowed} are the least.`,
        mend: "Open the shutter further, or have the panels refresh faster. Try it with the camera before the event.",
      });
      for (const [what, other] of [
        ["refresh", refresh],
        ["picture's rate", picture.rate],
      ] as const)
        if (rate.known && other.known)
          yield is(film, {
            holds: !beats(rate.value, (other as Known).value),
            says: `The camera runs at ${rate.value} Hz and the ${what} of face ${face.name} is ${(other as Known).value} Hz${beats(rate.value, (other as Known).value) ? ": they beat" : ""}.`,
            mend: "Set camera and picture to rates of which one is a whole multiple of the other, and lock them to one another where they can be.",
          });
    }
  },
});
