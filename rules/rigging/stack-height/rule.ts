import { atMost, rule } from "@plumbmark/kit";

export default rule({
  id: "rigging.stack-height",
  states: "No more panels stand on one another than the maker allows.",
  level: "shall",
  why: "The frame of the bottom panel carries every panel above it. Past the limit it bends, and the stack leans.",
  judged: "Panels in the fullest column of every standing face against the maker's limit.",
  sources: ["part"],
  *checks({ build }) {
    for (const face of build.faces.filter(({ support }) => support === "stacked" || support === "deck"))
      yield atMost(face, {
        measured: face.tallestColumn,
        allowed: face.makersLimit("stacked-above", "most panels one on another"),
        says: ({ measured, allowed }) =>
          `${face.label} has ${measured} panels in a column; the maker lets ${allowed} stand on one another.`,
        mend: "Take rows off the face, or hold the upper rows by a structure of their own.",
      });
  },
});
