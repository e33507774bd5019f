import { atMost, is, open, rule } from "@plumbmark/kit";

/** Classes that give what a public supply gives, or better. */
const STEADY: readonly string[] = ["G2", "G3", "G4"];

export default rule({
  id: "power.generator-class",
  states: "A generator keeps voltage and frequency as a public supply does, and takes its largest circuit in one step.",
  level: "should",
  why: "A set that hunts makes a picture flicker in every camera. One that is given more than its step at once dips so far that supplies drop out, start again together, and stall it.",
  judged:
    "Of a supply that says `generator`: its performance class, G2 or better; G1 is for lamps and heaters. The load of its fullest circuit, which one breaker switches on, against the largest step its maker states. Circuits are closed one after another; that is for the power-up.",
  sources: ["iso-8528-1", "practice"],
  *checks({ build }) {
    for (const { generator } of build.supplies) {
      if (!generator) continue;
      const { label, named, path } = generator;
      const found = generator.word("class");
      const thing = { path: `${path}.class`, label };
      if (found === undefined)
        yield open(thing, {
          says: `${label}: its performance class is not written down.`,
          mend: `Ask who hires it out, and write \`G1\` to \`G4\` under \`${path}.class\`.`,
          needs: [`${path}.class`],
          sources: ["iso-8528-1"],
        });
      else
        yield is(thing, {
          holds: STEADY.includes(found),
          says: `${label} is of class ${found}${STEADY.includes(found) ? "" : ", which is for lamps and heaters"}.`,
          mend: "Hire a set of class G2 or better.",
          sources: ["iso-8528-1"],
        });
      yield atMost(
        { path: `${path}.step`, label },
        {
          measured: generator.largest,
          allowed: generator.step,
          says: ({ measured, allowed }) =>
            `The fullest circuit of ${named} puts ${measured} on it at once; it takes ${allowed} in one step.`,
          sources: ["practice"],
          mend: "Spread the load over more circuits and close them one after another, or hire a larger set.",
        },
      );
    }
  },
});
