import { atMost, rule } from "@plumbmark/kit";

export default rule({
  id: "data.chain-length",
  states: "A chain has no more panels than the processor or panel allows.",
  level: "shall",
  why: "Past the maker's limit the last panels lose the picture or flicker, often only once everything is warm.",
  judged: "Panels of the chain against the least limit stated by the processor and by the panels.",
  sources: ["part"],
  *checks({ build }) {
    for (const chain of build.chains)
      yield atMost(chain, {
        measured: chain.panelCount,
        allowed: chain.panelLimit,
        says: ({ measured, allowed }) => `${chain.label} has ${measured} panels; ${allowed} are allowed on one chain.`,
        mend: "Split the chain over two ports.",
      });
  },
});
