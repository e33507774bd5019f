import { awgArea, copperHop, cordBudgets, type Value } from "@plumbmark/calc";
import { atMost, open, rule } from "@plumbmark/kit";

/** TIA gives 24 AWG less loss. A cord of unknown gauge, and any in iec practice, counts as ISO/IEC 11801 lets it be. */
const cordGauge = (conductor: Value, practice: "us" | "iec"): keyof typeof cordBudgets =>
  practice === "us" && conductor.known && conductor.value > awgArea(25) ? "24 AWG" : "26 AWG";

export default rule({
  id: "data.hop-length",
  states: "No data cable is longer than its medium carries.",
  level: "shall",
  why: "A network cable that is too long works on the bench and loses packets in the hall.",
  judged:
    "Every feed, jumper and return against the longest length its maker states; else, with solid conductors, against the channel of 100 m. A stranded cord loses more, so that a run of cord alone reaches K ÷ (1 + D), where K is the loss of 90 m of fixed cable and 10 m of cord, as a length of fixed cable, and D the extra loss of the cord. ISO/IEC 11801 lets a cord lose half as much again: K = 90 m + 1.5 × 10 m = 105 m, and 105 m ÷ 1.5 = 70 m. ANSI/TIA/EIA-568-B.1 gives 24 AWG a fifth: K = 102 m, and 102 m ÷ 1.2 = 85 m. The 85 m count only in us practice and for a part that states 24 AWG or larger, the 70 m for every other stranded cord. Neither standard tabulates a run of cord alone, so a certifying tester has the last word.",
  sources: ["iec-11801", "iec-11801-2002", "tia-568-b.1", "part"],
  *checks({ build }) {
    for (const cable of build.chains.flatMap((chain) => [
      chain.feed,
      ...((chain.panels?.length ?? 0) > 1 ? [chain.jumper] : []),
      ...(chain.closing ? [chain.closing] : []),
    ])) {
      const strands = cable.part?.data.strands;
      const stated = cable.longest;
      if (!stated && (cable.part?.data.category === "fibre" || (strands !== "solid" && strands !== "stranded"))) {
        yield open(cable, {
          says: `${cable.label}: the part does not say how far it carries.`,
          mend: "State `strands: solid` or `strands: stranded`, or the maker's `longest`, in the catalogue.",
          needs: [`${cable.path}.part`],
        });
        continue;
      }
      const gauge = cordGauge(cable.conductor, build.practice);
      const hop = copperHop(strands === "solid" ? "solid" : cordBudgets[gauge]);
      yield atMost(cable, {
        measured: cable.length,
        allowed: stated ?? hop.limit,
        sources: [stated ? "part" : hop.source],
        says: ({ measured, allowed }) => `${cable.label} is ${measured} long; it carries ${allowed}.`,
        turns: { path: `${cable.path}.length`, sense: "at most" },
        mend: "Move the processor nearer, use solid conductors, or go over to fibre.",
      });
    }
  },
});
