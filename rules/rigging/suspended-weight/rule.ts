import { atMost, is, open, rule } from "@plumbmark/kit";

export default rule({
  id: "rigging.suspended-weight",
  states:
    "Everything flown from a bar weighs no more than the structure is stated to carry, and the stated rating is on record.",
  level: "shall",
  why: "What a ceiling or a beam may carry cannot be seen. A rating that nobody signed is a guess over people's heads.",
  judged:
    "All that hangs against the sum of the structure ratings, and whether `structure-by` names who states them. What hangs: panels; extras of the face, such as hanging bars; of every feed and return that ends at a panel on this bar the length that `hangs`, else the whole of it, the safe side; every jumper, half of it at each of its two panels; the bar itself; what is written as its `other-load`; and, on the structure only, the assemblies it hangs by. Where it acts along the bar, for every rule that solves it: the bar's own mass evenly over its length; the panels of a column, its share of the extras, the same for every column, and its jumpers evenly over the width of the column; a feed or return at the middle of the column it ends in; other load in the middle of the bar.",
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
    const by = build.reader.text("rigging.structure-by");
    if (build.bars.length === 0) return;
    const where = { path: "rigging", label: "The rigging" };
    if (by === undefined)
      yield open(where, {
        says: "Nobody is named who states what the structure carries.",
        mend: "Have a licensed engineer state it, and write who and when under `rigging.structure-by`.",
        needs: ["rigging.structure-by"],
      });
    else yield is(where, { holds: true, says: `The structure's ratings are on record: ${by}.` });
  },
});
