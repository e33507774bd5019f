import { awgArea, copperHop, cordBudgets, type Value } from "@plumbmark/calc";
import { atMost, open, rule } from "@plumbmark/kit";

/** A cord whose gauge is not stated counts as the thinner one, which reaches less. */
const cordGauge = (conductor: Value): keyof typeof cordBudgets =>
  conductor.known && conductor.value > awgArea(25) ? "24 AWG" : "26 AWG";

export default rule({
  id: "data.hop-length",
  states: "No data cable is longer than its medium carries.",
  level: "shall",
  why: "A network cable that is too long works on the bench and loses packets in the hall.",
  judged:
    "Every feed, jumper and return against the longest length its maker states, or the 100 m channel for solid conductors; stranded cords alone reach less.",
  sources: ["iec-11801"],
  *checks({ build }) {
    for (const cable of build.chains.flatMap((chain) => [
      chain.feed,
      ...((chain.panels?.length ?? 0) > 1 ? [chain.jumper] : []),
      ...(chain.closing ? [chain.closing] : []),
    ])) {
      const strands = cable.part?.data.strands;
      const stated = cable.part?.quantities.get("longest");
      if (!stated && (cable.part?.data.category === "fibre" || (strands !== "solid" && strands !== "stranded"))) {
        yield open(cable, {
          says: `${cable.label}: the part does not say how far it carries.`,
          mend: "State `strands: solid` or `strands: stranded`, or the maker's `longest`, in the catalogue.",
          needs: [`${cable.path}.part`],
        });
        continue;
      }
      const limit = stated ?? copperHop(strands === "solid" ? "solid" : cordBudgets[cordGauge(cable.conductor)]).limit;
      yield atMost(cable, {
        measured: cable.length,
        allowed: limit,
        says: ({ measured, allowed }) => `${cable.label} is ${measured} long; it carries ${allowed}.`,
        mend: "Move the processor nearer, use solid conductors, or go over to fibre.",
      });
    }
  },
});
