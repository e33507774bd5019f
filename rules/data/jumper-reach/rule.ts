import { atLeast, rule } from "@plumbmark/kit";

export default rule({
  id: "data.jumper-reach",
  states: "Every jumper, power or data, reaches from panel to panel with slack.",
  level: "shall",
  why: "A jumper that is drawn tight pulls its plug askew and comes out when the face moves; one that is too short is found out with the face in the air.",
  judged:
    "The straight distance from the out connector of a panel to the in connector of the next, where the part says they are, else from centre to centre, and the slack, against the length of the jumper. The longest step of each run and chain counts.",
  sources: ["geometry", "practice"],
  settings: {
    slack: {
      us: 0.1016,
      iec: 0.1,
      kind: "length",
      stricter: "more",
      describe: "slack of a jumper over the straight distance",
    },
  },
  *checks({ build, settings }) {
    for (const jumpers of build.jumpers) {
      const { longest } = jumpers;
      const needed = jumpers.needed(settings.slack as number);
      const stocked = needed.known ? jumpers.stockedFrom(needed.value) : undefined;
      const between = longest ? ` from ${longest.from.name} to ${longest.to.name}` : "";
      yield atLeast(jumpers, {
        measured: jumpers.length,
        allowed: needed,
        says: ({ measured, allowed }) =>
          `${jumpers.label} is ${measured} long; the step${between} asks for ${allowed}, slack included.`,
        turns: { path: `${jumpers.path}.length`, sense: "at least" },
        mends: stocked === undefined ? [] : [{ at: `${jumpers.path}.length`, becomes: stocked, sure: true }],
        mend: "Take a longer jumper for the longest step, or lay the cable from neighbour to neighbour.",
      });
    }
  },
});
