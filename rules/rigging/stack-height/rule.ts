import { atMost, type Face, is, open, type RawCheck, rule } from "@plumbmark/kit";

function beyondGaps(face: Face): RawCheck {
  const { unheld, gapsHeldBy: by } = face;
  const many = unheld.length === 1 ? "1 panel stands" : `${unheld.length} panels stand`;
  return by === undefined
    ? open(face, {
        says: `${face.label}: ${many} above a gap, and what holds ${unheld.length === 1 ? "it" : "them"} is not written down.`,
        mend: "Fill the gap, or make them a face of their own with a base of its own. If the maker states in writing what holds them, write who states it under `gaps-held-by`.",
        needs: [`${face.path}.gaps-held-by`],
      })
    : is(face, {
        holds: true,
        says: `${face.label}: ${many} above a gap; what holds ${unheld.length === 1 ? "it" : "them"} is stated by ${by}.`,
      });
}

export default rule({
  id: "rigging.stack-height",
  states: "No more panels stand on one another than the maker allows.",
  level: "shall",
  why: "The frame of the bottom panel carries every panel above it. Past the limit it bends, and the stack leans.",
  judged:
    "Panels in the fullest column of every standing face against the maker's limit. Nothing in their own column holds panels above a gap, such as a doorway: the check on them is open until somebody who can tell is named, and the columns beside the gap count them with their own.",
  sources: ["part"],
  *checks({ build }) {
    for (const face of build.faces.filter(({ support }) => support === "stacked" || support === "deck")) {
      if (face.unheld.length > 0) yield beyondGaps(face);
      yield atMost(face, {
        measured: face.tallestColumn,
        allowed: face.makersLimit("stacked-above", "most panels one on another"),
        says: ({ measured, allowed }) =>
          `${face.label} has ${measured} panels in a column; the maker lets ${allowed} stand on one another.`,
        turns: { path: `${face.path}.rows`, sense: "at most" },
        mend: "Take rows off the face, or hold the upper rows by a structure of their own.",
      });
    }
  },
});
