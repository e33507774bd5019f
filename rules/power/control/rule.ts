import { is, open, rule } from "@plumbmark/kit";

const SAYS = {
  constant: "has constant power",
  relay: "is switched by a relay",
  dimmer: "is dimmed",
  "non-dim": "is a dimmer in its non-dim mode",
} as const;

const isControl = (text: string | undefined): text is keyof typeof SAYS => text !== undefined && text in SAYS;

export default rule({
  id: "power.control",
  states: "Circuits give constant power: none is dimmed, and a relay stays closed.",
  level: "shall",
  why: "A dimmer chops the wave, parked at full and in its non-dim mode, too. The supplies of panels and processors overheat on it, and a desk that runs a cue takes the picture away in the middle of the event.",
  judged:
    "What is written under `control` of every circuit: `constant` holds; a `dimmer` and the `non-dim` mode of one fail; a `relay` holds once somebody has confirmed under `stays-on` that it is closed for the whole event. Not written is open. A circuit no run and no device is on is not judged.",
  sources: ["stage-control"],
  *checks({ build }) {
    for (const circuit of build.circuits) {
      const { control, path, runs, devices } = circuit;
      if (runs.length === 0 && devices.length === 0) continue;
      if (!isControl(control)) {
        yield open(circuit, {
          says: `How ${circuit.label} is controlled is not written down.`,
          mend: `Ask the house, and write \`${path}.control\`: \`constant\`, \`relay\`, \`dimmer\` or \`non-dim\`.`,
          needs: [`${path}.control`],
        });
        continue;
      }
      const { by, on } = build.confirmation(`${path}.stays-on`);
      if (control === "relay" && (by === undefined || on === undefined)) {
        yield open(circuit, {
          says: `${circuit.label} is switched by a relay; who keeps it closed for the whole event is not written down.`,
          mend: `Have the house confirm it, and write \`stays-on: {by: …, on: …}\` with the name and the day.`,
          needs: [by === undefined ? `${path}.stays-on.by` : `${path}.stays-on.on`],
        });
        continue;
      }
      yield is(circuit, {
        holds: control === "constant" || control === "relay",
        says: `${circuit.label} ${SAYS[control]}${control === "relay" ? `; ${by?.name} has confirmed on ${on} that it stays closed` : ""}.`,
        mend: "Take a circuit of constant power. Ask the house's electrician; a dimmer's module is not changed by anybody else.",
      });
    }
  },
});
