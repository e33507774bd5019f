import { atMost, open, rule } from "@plumbmark/kit";

export default rule({
  id: "rigging.point-load",
  states: "Every hang carries no more than its weakest part and the structure at that point.",
  level: "shall",
  why: "Hangs do not share a load evenly: with three, the middle one carries more than half.",
  judged: "The bar is solved as a continuous beam on its hangs, panels where they really are; each reaction is held against the least WLL of its assembly and against the structure rating.",
  sources: ["three-moment", "practice"],
  *checks({ build }) {
    for (const bar of build.bars) {
      if (bar.hangs.length === 0) yield open(bar, { says: `${bar.label} has no hangs written down.`, mend: "Write every hang with its place, its assembly and its structure rating.", needs: [`${bar.path}.hangs`] });
      for (const hang of bar.hangs) {
        if (hang.bridled) {
          yield open(hang, { says: `${hang.label} is a bridle; the tension of its legs is not worked out here.`, mend: "Have a qualified rigger work out the tension of both legs.", needs: [] });
          continue;
        }
        for (const [what, allowed] of [["weakest part", hang.weakest], ["structure", hang.structure]] as const)
          yield atMost(hang, {
            measured: hang.reaction,
            allowed,
            says: (words) => `${hang.label} carries ${words.measured}; its ${what} is rated ${words.allowed}.`,
            mend: "Add a hang, move the hangs, or take hardware of a higher WLL. A licensed engineer states what the structure carries.",
          });
      }
    }
  },
});
