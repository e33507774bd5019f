import { atMost, rule } from "@plumbmark/kit";

export default rule({
  id: "rigging.suspended-weight",
  states: "Everything flown from a bar weighs no more than the structure is stated to carry.",
  level: "shall",
  why: "What a ceiling or a beam may carry cannot be seen. What hangs from it adds up out of many small things.",
  judged:
    "All that hangs against what the structure is stated to carry in all, else the sum of the ratings of its points. That a letter states them is judged by rigging.letter. What hangs: panels; what hangs its columns from the bar, and extras of the face; of every feed and return that ends at a panel on this bar the length that `hangs`, else the whole of it, the safe side; every jumper, half of it at each of its two panels; the bar itself; what is written as its `other-loads`; and, on the structure only, the assemblies it hangs by and the second suspension. Where it acts along the bar, for every rule that solves it: the bar's own mass evenly over its length; the panels of a column, its share of the extras, the same for every column, and its jumpers evenly over the width of the column; a feed or return at the middle of the column it ends in; other loads at their place; without one in the middle of a level bar, and at worst wherever it is worst.",
  sources: ["practice"],
  *checks({ build }) {
    for (const bar of build.bars)
      yield atMost(bar, {
        measured: bar.onStructure,
        allowed: bar.structure,
        says: ({ measured, allowed }) =>
          `${bar.label}, what it carries and what it hangs by weigh ${measured}; the structure is stated to carry ${allowed}.`,
        turns: { path: `${bar.path}.structure`, sense: "at least", asks: "engineer" },
        mend: "Take weight off the bar, or have a licensed engineer state a higher rating.",
      });
  },
});
