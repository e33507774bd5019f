import { is, open, rule } from "@plumbmark/kit";

const TYPES: readonly string[] = ["AC", "A", "F", "B"];

export default rule({
  id: "power.residual-type",
  states: "In iec practice a residual device that feeds electronic supplies is of type A, F or B.",
  level: "shall",
  why: "The rectifiers of panels and processors leak pulses of direct current when they fail. A device of type AC is blinded by them and may not open when somebody touches a live part.",
  judged:
    "Of every circuit with a residual device in iec practice that feeds panels or devices: the type on its symbol. `AC` fails, `A`, `F` and `B` hold, nothing written is open. Us practice has no such types, and is not judged.",
  sources: ["bs-7671-531.3.3"],
  *checks({ build }) {
    if (build.practice !== "iec") return;
    for (const circuit of build.circuits) {
      if (!circuit.hasResidual || (circuit.runs.length === 0 && circuit.devices.length === 0)) continue;
      const type = build.reader.text(`${circuit.path}.residual-type`);
      // A survey may hold what its schema does not allow.
      if (type === undefined || !TYPES.includes(type))
        yield open(circuit, {
          says: `Of which type the residual device of circuit ${circuit.name} is, is not written down.`,
          mend: `Look at the symbol on the device, and write \`AC\`, \`A\`, \`F\` or \`B\` under \`${circuit.path}.residual-type\`.`,
          needs: [`${circuit.path}.residual-type`],
        });
      else
        yield is(circuit, {
          holds: type !== "AC",
          says: `The residual device of circuit ${circuit.name} is of type ${type}.`,
          mend: "Ask the venue's licensed electrician for a circuit with a device of type A.",
        });
    }
  },
});
