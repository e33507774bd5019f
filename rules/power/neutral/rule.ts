import { atMost, rule } from "@plumbmark/kit";

export default rule({
  id: "power.neutral",
  states: "The neutral of a three-phase circuit carries no more than its lines may.",
  level: "should",
  why: "Third harmonics of switched supplies add up in the neutral even when the legs are alike, and no breaker watches the neutral.",
  judged:
    "Of a three-phase circuit with runs on one leg and neutral: the most its neutral can carry against the rating of the breaker, since a neutral is as large as its lines unless somebody says otherwise. Its current, squared, is the vector sum of the legs' currents, squared, and the distortion of all legs added, squared: of a load of power factor λ no more than √(1 − λ²) is distortion, and all of it counts as third harmonic, the safe side. The least power factor of the panels counts; one that is not written is open. Devices and other loads are not counted. An electrician who has measured it, or has laid a larger neutral, may say so in a waiver.",
  sources: ["electrical-definition", "practice"],
  *checks({ build }) {
    for (const circuit of build.circuits) {
      const { neutral } = circuit;
      if (neutral)
        yield atMost(circuit, {
          measured: neutral,
          allowed: circuit.breaker,
          says: ({ measured, allowed }) =>
            `The neutral of circuit ${circuit.name} carries up to ${measured}; its lines are protected at ${allowed}.`,
          mend: "Put fewer panels on it, feed them between two lines, or have an electrician measure the neutral.",
        });
    }
  },
});
