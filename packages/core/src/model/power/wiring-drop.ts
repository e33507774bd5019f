import {
  conductorResistance,
  type Known,
  missing,
  segmentDrop,
  sharedLineDrop,
  sum,
  times,
  type Value,
} from "@plumbmark/calc";
import type { Circuit } from "./circuit.js";
import { currentBeside } from "./other-load.js";
import type { Run } from "./run.js";

const total = (values: readonly Value[]): Value<"current"> => sum(values, "current", "I");

/** Resistance per length and length of the building wiring. */
interface Line {
  readonly r: Value<"resistance-per-length">;
  readonly L: Value<"length">;
}

/** Two wires carry everything on the circuit. */
function ofTwoWires(run: Run, circuit: Circuit, line: Line): Value<"voltage"> {
  const others = circuit.runs.filter((each) => each !== run).flatMap((each) => each.taps);
  return segmentDrop.of({ I: total([...run.taps, ...others, ...currentBeside(circuit, run.voltage)]), ...line });
}

/** Runs of a three-phase circuit share its wires by the legs they are on. Other load counts on every leg. */
function ofThreePhase(run: Run, circuit: Circuit, line: Line): Value<"voltage"> {
  const own = run.legs as string;
  const runs = (holds: (legs: string) => boolean): readonly Value[] =>
    circuit.runs.filter((each) => holds(each.legs ?? "")).flatMap((each) => each.taps);
  const unsaid = circuit.runs.filter((each) => each.legs === undefined);
  if (unsaid.length > 0)
    return missing("voltage", ...unsaid.map((each) => ({ path: `${each.path}.legs`, what: "legs", of: each.label })));
  const pair = own.length === 2;
  const touches = (legs: string): boolean => [...legs].some((leg) => own.includes(leg));
  const other = currentBeside(circuit, times(circuit.voltage, 1 / Math.sqrt(3), "1 ÷ √3"));
  return sharedLineDrop.of({
    I: total([...runs((legs) => legs === own), ...(pair ? [] : other)]),
    J: total(pair ? runs((legs) => legs.length === 2 && legs !== own) : []),
    K: total([
      ...runs((legs) => legs.length !== own.length && touches(legs)),
      ...(pair ? other.flatMap((each) => [each, each]) : []),
    ]),
    ...line,
  });
}

/** Voltage a run loses in the building wiring, everything else on the circuit included. */
export function wiringDrop(run: Run): Value<"voltage"> {
  const { circuit } = run;
  const { reader } = run.build;
  // Without a circuit there is no wiring to ask for, but the circuit.
  if (!circuit) return missing("voltage", { path: `${run.path}.from`, what: "circuit it is fed from", of: run.label });
  const path = `${circuit.path}.wiring`;
  const owner = circuit.label;
  const conductor = reader.value(`${path}.conductor`, "conductor", "conductor of the building wiring", owner);
  const line = {
    r: conductorResistance(conductor),
    L: reader.value(`${path}.length`, "length", "length of the building wiring", owner),
  };
  return circuit.threePhase && run.legs !== undefined
    ? ofThreePhase(run, circuit, line)
    : ofTwoWires(run, circuit, line);
}

/** Drop of the feeder as the run sees it: a share of its voltage, or volts between the lines of the supply. */
export function feederDropOf(run: Run): Value<"voltage"> | undefined {
  const path = `${run.circuit?.path}.wiring.feeder-drop`;
  const written = run.build.reader.optional(
    path,
    "ratio",
    "voltage drop of the feeder",
    run.circuit?.label ?? run.label,
  );
  if (!written?.known) return written && missing("voltage", ...written.gaps);
  if ((written as Known).kind !== "ratio") {
    const volts: Known<"voltage"> = { ...written, kind: "voltage" };
    return run.legs?.length === 1 ? times(volts, 1 / Math.sqrt(3), "1 ÷ √3") : volts;
  }
  const { voltage } = run;
  return voltage.known ? times(voltage, written.value, `${Number((written.value * 100).toPrecision(9))} %`) : voltage;
}

export const noFeederDrop = (run: Run): Value<"voltage"> =>
  missing(
    "voltage",
    run.build.reader.gap(
      `${run.circuit?.path ?? run.path}.wiring.feeder-drop`,
      "voltage drop of the feeder before its breaker",
      run.circuit?.label ?? run.label,
    ),
  );
