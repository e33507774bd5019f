import { sum, type Value } from "@plumbmark/calc";
import type { Circuit } from "../../model/power/circuit.js";
import { settingNumber } from "../../model/values/setting.js";
import { type ColumnOf, NOT_STATED } from "../table.js";
import { isWord } from "../word.js";

/** Supply in the words of the document: `120 V`, `208 V between lines AB`, `208 V three phase`. */
function supplyOf({ build: { reader }, path }: Circuit): string {
  const plain = reader.data(`${path}.supply`);
  if (isWord(plain)) return String(plain);
  const line = reader.data(`${path}.supply.line-to-line`);
  const legs = reader.text(`${path}.supply.legs`);
  if (isWord(line)) return `${line} between lines${legs === undefined ? "" : ` ${legs}`}`;
  const three = reader.data(`${path}.supply.three-phase`);
  return isWord(three) ? `${three} three phase` : NOT_STATED;
}

const panelsOn = (circuit: Circuit): Value =>
  sum(
    circuit.runs.map((run) => run.panelCount),
    "count",
    "n",
  );

const riddenBy = (circuit: Circuit): Value =>
  circuit.peakRidden(settingNumber(circuit.build, "power.inrush", "multiple"));

export const circuitColumns: readonly ColumnOf<Circuit>[] = [
  { name: "Circuit", of: ({ name }) => name },
  { name: "Supply", of: supplyOf },
  { name: "Outlet", of: ({ outlet }) => outlet ?? NOT_STATED },
  { name: "Breaker", kind: "current", of: ({ breaker }) => breaker },
  {
    name: "Residual device",
    kind: "current",
    of: (circuit) => (circuit.hasResidual ? circuit.residual : undefined),
    aside: true,
  },
  { name: "Control", of: ({ control }) => control ?? NOT_STATED, aside: true },
  { name: "Runs", of: ({ runs }) => runs.map(({ name }) => name).join(", ") || "none" },
  { name: "Panels", kind: "count", of: panelsOn },
  { name: "Devices", of: ({ devices }) => devices.map(({ part }) => part.name).join(", ") || "none" },
  { name: "Load", kind: "apparent-power", of: ({ load }) => load, aside: true },
  { name: "Current", kind: "current", of: ({ current }) => current },
  { name: "Continuous rating", kind: "current", of: (circuit) => circuit.continuousRating() },
  { name: "Share", kind: "ratio", of: ({ share }) => share },
  { name: "Inrush, peak", kind: "current", of: ({ inrush }) => inrush, aside: true },
  { name: "Rides through", kind: "current", of: riddenBy, aside: true },
];
