import { atLeast, rule } from "plumbmark/kit";

export default rule({
  id: "house.my-rule",
  // One statement, as it would stand in a standard.
  states: "A flown face hangs at least as high as the house asks for.",
  level: "should",
  why: "What goes wrong on site without it.",
  judged: "The trim of every flown face against the least trim that is set.",
  sources: ["house"],
  settings: {
    least: { us: 3.048, iec: 3, kind: "length", stricter: "more", describe: "least trim of a flown face" },
  },
  *checks({ build, limits }) {
    for (const face of build.faces.filter(({ support }) => support === "flown"))
      yield atLeast(face, {
        measured: build.reader.value(`${face.path}.trim`, "length", "trim", face.label),
        allowed: limits.least,
        says: ({ measured, allowed }) => `${face.label} hangs at ${measured}; the house asks for ${allowed}.`,
        mend: "Raise the trim.",
      });
  },
});
