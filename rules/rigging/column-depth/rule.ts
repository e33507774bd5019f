import { atMost, type Face, is, open, type RawCheck, rule } from "@plumbmark/kit";

function beyondGaps(face: Face): RawCheck {
  const { unheld, gapsHeldBy: by } = face;
  const many = unheld.length === 1 ? "1 panel hangs" : `${unheld.length} panels hang`;
  return by === undefined
    ? open(face, {
        says: `${face.label}: ${many} below a gap, and what holds ${unheld.length === 1 ? "it" : "them"} is not written down.`,
        mend: "Fill the gap, or make them a face of their own with a bar of its own. If the maker states in writing what holds them, write who states it under `gaps-held-by`.",
        needs: [`${face.path}.gaps-held-by`],
      })
    : is(face, {
        holds: true,
        says: `${face.label}: ${many} below a gap; what holds ${unheld.length === 1 ? "it" : "them"} is stated by ${by}.`,
      });
}

export default rule({
  id: "rigging.column-depth",
  states: "No more panels hang below one another than the maker allows.",
  level: "shall",
  why: "The lock of the top panel carries every panel below it. Past the limit it opens or tears, and the whole column comes down.",
  judged:
    "Panels in the fullest column of every flown face against the maker's limit; faces that a bar carries at the same place count together, against the least of their makers' limits. Nothing in their own column holds panels below a gap: the check on them is open until somebody who can tell is named, and the columns beside the gap count them with their own.",
  sources: ["part"],
  *checks({ build }) {
    for (const face of build.faces.filter(({ support }) => support === "flown")) {
      if (face.unheld.length > 0) yield beyondGaps(face);
      for (const bar of build.bars)
        for (const carried of bar.carries)
          if (carried.face === face) {
            const { panels, limit, shared } = bar.depthUnder(carried);
            if (shared || !panels.known)
              yield atMost(face, {
                measured: panels,
                allowed: limit,
                says: ({ measured, allowed }) =>
                  `${face.label} and what hangs under the same columns of bar ${bar.name} are ${measured} panels; the makers let ${allowed} hang below one another.`,
                mend: "Take rows off, or hang one of the faces from a bar of its own.",
              });
          }
      yield atMost(face, {
        measured: face.tallestColumn,
        allowed: face.makersLimit("flown-below", "most panels one under another"),
        says: ({ measured, allowed }) =>
          `${face.label} has ${measured} panels in a column; the maker lets ${allowed} hang below one another.`,
        turns: { path: `${face.path}.rows`, sense: "at most" },
        mend: "Take rows off the face, or hang the lower rows from a bar of their own.",
      });
    }
  },
});
