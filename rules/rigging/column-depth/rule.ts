import { atMost, rule } from "@plumbmark/kit";

export default rule({
  id: "rigging.column-depth",
  states: "No more panels hang below one another than the maker allows.",
  level: "shall",
  why: "The lock of the top panel carries every panel below it. Past the limit it opens or tears, and the whole column comes down.",
  judged: "Panels in the fullest column of every flown face against the maker's limit.",
  sources: ["part"],
  *checks({ build }) {
    for (const face of build.faces.filter(({ support }) => support === "flown"))
      yield atMost(face, {
        measured: face.tallestColumn,
        allowed: face.makersLimit("flown-below", "most panels one under another"),
        says: ({ measured, allowed }) =>
          `${face.label} has ${measured} panels in a column; the maker lets ${allowed} hang below one another.`,
        mend: "Take rows off the face, or hang the lower rows from a bar of their own.",
      });
  },
});
