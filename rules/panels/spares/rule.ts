import { counted, tabled } from "@plumbmark/calc";
import { atLeast, open, rule } from "@plumbmark/kit";

export default rule({
  id: "panels.spares",
  states: "A face has spares of its own batch.",
  level: "should",
  why: "A panel that fails at load-in is replaced from the van or not at all, and one of another batch shows as a patch.",
  judged:
    "The spares of each face against the share of its panels, rounded up, and at least the least number. They come out of the lots of the face, which are held to one batch elsewhere.",
  sources: ["practice"],
  settings: {
    share: {
      us: 0.05,
      iec: 0.05,
      kind: "ratio",
      stricter: "more",
      describe: "spares as a share of the panels of the face",
    },
    least: { us: 1, iec: 1, stricter: "more", describe: "least number of spares of a face" },
  },
  *checks({ build, settings }) {
    for (const face of build.faces) {
      const { spares } = face;
      if (spares === undefined) {
        yield open(face, {
          says: `${face.label} has no number of spares written down.`,
          mend: `Write it under \`${face.path}.spares\`; none is 0.`,
          needs: [`${face.path}.spares`],
        });
        continue;
      }
      // Floating-point noise must not ask for one more: 5 % of 40 are two.
      const needed = Math.max(
        Math.ceil((settings.share as number) * face.cells.length - 1e-9),
        settings.least as number,
      );
      yield atLeast(face, {
        measured: counted(spares, `spares of ${face.name}`),
        allowed: tabled(needed, "count", "house", `spares for ${face.cells.length} panels`),
        says: ({ measured, allowed }) =>
          `${face.label} of ${face.cells.length} panels has spares: ${measured}; needed: ${allowed}.`,
        turns: { path: `${face.path}.spares`, sense: "at least" },
        mend: "Add spares from the same lot.",
      });
    }
  },
});
