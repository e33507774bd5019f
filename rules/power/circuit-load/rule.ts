import { continuousShare, tabled, type Value } from "@plumbmark/calc";
import { atMost, type Build, open, rule, type Turns } from "@plumbmark/kit";

type Circuit = Build["circuits"][number];

/** What may be changed: the other load, where there is one. A breaker that is not written is asked for; one that is stays. */
function turnsOf(circuit: Circuit): Turns | undefined {
  if (!circuit.breaker.known) return { path: `${circuit.path}.breaker`, sense: "at least", asks: "electrician" };
  const other = `${circuit.path}.other-load`;
  return circuit.build.reader.quantities.has(other) ? { path: other, sense: "at most" } : undefined;
}

/** Whether it holds only if the watts of its other load are no more volt-amperes. */
function restsOnFactor({ current, currentAtHalfFactor: most }: Circuit, rating: Value<"current">): boolean {
  if (!current.known || !rating.known || !most?.known) return false;
  return current.value <= rating.value && most.value > rating.value;
}

function mendOf(circuit: Circuit, rating: Value<"current">): string {
  const count = circuit.runs.reduce((all, run) => all + run.loads.length, 0);
  const fit = circuit.panelsWithin(rating);
  if (count === 0) return "Move some of the other load to another circuit.";
  const far = "or feed the run at a higher voltage.";
  if (fit === undefined || fit >= count) return `Move panels to another circuit, ${far}`;
  if (fit === 0)
    return `None of its ${count} panels fits beside what else is on it: move them to another circuit, ${far}`;
  return `${fit} of its ${count} panels fit: move ${count - fit} to another circuit, ${far}`;
}

export default rule({
  id: "power.circuit-load",
  states: "A circuit carries no more than its continuous rating, and neither does the supply circuits are taken from.",
  level: "shall",
  why: "A display runs for hours. A breaker loaded above its continuous rating warms up and trips in the middle of the event, and the wiring ages.",
  judged:
    "S is the sum over the circuit of every panel's maximum power ÷ its power factor, of the devices it `serves`, and of the other load, `none` where there is none. An other load in VA counts as written; one in W counts at power factor 1, because none is written for it, and where the circuit would be over its rating at 0.5 it is asked for in VA. Between a line and neutral, and between two lines, I = S ÷ V with the voltage across the load, and both wires carry it. On a three-phase circuit each run says which `legs` it is on: two loads between lines, I and J, share a leg as √(I² + J² + I × J), loads between one leg and neutral are added to that plainly, other load counts on every leg, and the fullest leg decides. The current is held against the breaker rating × the continuous share. A breaker and assembly listed for 100 % counts in full once its listing is stated, `rated-100: {listing: …}`, unless the house standard sets a share of its own. Of a supply that circuits name under `from` the fullest leg of all of them counts, against its own breaker under `power.supplies`. The neutral is not judged: see power.leg-balance.",
  sources: ["nec-210.20a", "nec-210.20a-100", "nec-215.3", "iec-60364-4-43"],
  settings: {
    share: { us: 0.8, iec: 1, kind: "ratio", stricter: "less", describe: "continuous share of the breaker's rating" },
  },
  *checks({ build, settings }) {
    const usual = continuousShare(build.practice).value;
    const house = tabled(settings.share as number, "ratio", "house", "continuous share of the house standard");
    for (const circuit of build.circuits) {
      const rating = circuit.continuousRating(settings.share === usual ? circuit.continuousShare : house);
      if (!circuit.saysOtherLoad)
        yield open(circuit, {
          says: `Whether anything else is on ${circuit.label} is not written down.`,
          mend: `Ask the house what else is on it, and write \`${circuit.path}.other-load\`: watts or VA, or \`none\`.`,
          needs: [`${circuit.path}.other-load`],
        });
      yield atMost(circuit, {
        measured: circuit.current,
        allowed: rating,
        says: ({ measured, allowed }) => `${circuit.label} carries ${measured}; its continuous rating is ${allowed}.`,
        turns: turnsOf(circuit),
        mend: mendOf(circuit, rating),
      });
      if (restsOnFactor(circuit, rating))
        yield open(circuit, {
          says: `The other load of ${circuit.label} is written in watts and counts at power factor 1. At 0.5, which small power supplies and lamps have, the circuit would carry more than its continuous rating.`,
          mend: `Write \`${circuit.path}.other-load\` in VA: volts × amperes of the plate.`,
          needs: [`${circuit.path}.other-load`],
          sources: ["practice"],
        });
    }
    for (const supply of build.supplies)
      yield atMost(supply, {
        measured: supply.current,
        allowed: supply.continuousRating(settings.share === usual ? supply.continuousShare : house),
        says: ({ measured, allowed }) =>
          `${supply.label} carries ${measured} on its fullest leg; its continuous rating is ${allowed}.`,
        mend: "Take circuits from another supply, or move them to an emptier leg.",
      });
  },
});
