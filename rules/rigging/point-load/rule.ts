import { atMost, open, rule } from "@plumbmark/kit";

export default rule({
  id: "rigging.point-load",
  states: "Every hang carries no more than its weakest part and the structure at that point.",
  level: "shall",
  why: "Hangs do not share a load evenly: with three, the middle one carries more than half.",
  judged:
    "The bar is solved as a continuous beam on its hangs, taken as level, under everything that hangs on it where it really is (rigging.suspended-weight says what and where); each reaction is held against the least WLL of its assembly, and with the mass of the assembly against the structure rating. The legs of a bridle are judged by rigging.bridle-angle.",
  sources: ["three-moment", "practice"],
  *checks({ build }) {
    for (const bar of build.bars) {
      if (bar.hangs.length === 0)
        yield open(bar, {
          says: `${bar.label} has no hangs written down.`,
          mend: "Write every hang with its place, its assembly and its structure rating.",
          needs: [`${bar.path}.hangs`],
        });
      for (const hang of bar.hangs) {
        for (const { what, allowed, of } of hang.ratings)
          yield atMost(hang, {
            measured: of(hang.reaction),
            allowed,
            says: (words) =>
              what === "structure"
                ? `${hang.label} and its hardware weigh ${words.measured} on the structure, which is rated ${words.allowed} there.`
                : `${hang.label} carries ${words.measured}; its ${what} is rated ${words.allowed}.`,
            turns:
              what === "structure"
                ? { path: `${hang.path}.structure`, sense: "at least", asks: "engineer" }
                : undefined,
            mend: "Add a hang, move the hangs, or take hardware of a higher WLL. A licensed engineer states what the structure carries.",
          });
      }
    }
  },
});
