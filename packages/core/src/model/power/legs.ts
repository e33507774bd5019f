import { type Known, legCurrents, loadCurrent, missing, sum, times, type Value } from "@plumbmark/calc";
import type { Circuit } from "./circuit.js";
import { currentBeside, otherLoadOf } from "./other-load.js";
import type { Run } from "./run.js";

export type PhaseLeg = "A" | "B" | "C";
const LEGS: readonly PhaseLeg[] = ["A", "B", "C"];
const PAIRS = ["AB", "BC", "CA"] as const;

/** Between two lines a panel gets the voltage between lines, on one leg that over √3. */
export function runVoltage(run: Run, circuit: Circuit): Value<"voltage"> {
  if (!circuit.threePhase) return circuit.voltage;
  const { legs } = run;
  if (legs === undefined) return missing("voltage", { path: `${run.path}.legs`, what: "legs", of: run.label });
  return legs.length === 2 ? circuit.voltage : times(circuit.voltage, 1 / Math.sqrt(3), "1 ÷ √3");
}

const on = (runs: readonly Run[], legs: string): Value<"current"> =>
  sum(
    runs.filter((run) => run.legs === legs).map((run) => run.current),
    "current",
    "I",
  );

/**
 * Current of each leg of a three-phase circuit, A: loads between lines by vector sum, loads on one leg added plainly,
 * which is never below the vector sum. Other load without a leg of its own is counted on every leg: the safe side.
 */
export const legsOf = (circuit: Circuit): Readonly<Record<PhaseLeg, Value<"current">>> =>
  legsWith(circuit, otherOnEvery(circuit));

/** Current of each leg by runs and devices alone, and what the house has on every leg besides. */
export function otherCurrents(circuit: Circuit): {
  readonly legs: Readonly<Record<PhaseLeg, Value<"current">>>;
  readonly beside: Value<"current"> | undefined;
} {
  const voltage = times(circuit.voltage, 1 / Math.sqrt(3), "1 ÷ √3");
  const devices = circuit.devices.map(({ load }) => loadCurrent.of({ S: load, V: voltage }));
  const other = otherLoadOf(circuit);
  return {
    legs: legsWith(circuit, devices.length > 0 ? sum(devices, "current", "I") : undefined),
    beside: other && loadCurrent.of({ S: other, V: voltage }),
  };
}

function legsWith(circuit: Circuit, other: Value<"current"> | undefined): Readonly<Record<PhaseLeg, Value<"current">>> {
  const { runs } = circuit;
  const unsaid = runs.filter((run) => run.legs === undefined);
  const gaps = unsaid.map((run) => ({ path: `${run.path}.legs`, what: "legs", of: run.label }));
  if (gaps.length > 0)
    return Object.fromEntries(LEGS.map((leg) => [leg, missing("current", ...gaps)])) as Record<
      PhaseLeg,
      Value<"current">
    >;
  const [AB, BC, CA] = PAIRS.map((pair) => on(runs, pair)) as [Value<"current">, Value<"current">, Value<"current">];
  const between = legCurrents({ AB, BC, CA });
  return Object.fromEntries(LEGS.map((leg) => [leg, withOthers(between[leg], on(runs, leg), other)])) as Record<
    PhaseLeg,
    Value<"current">
  >;
}

const withOthers = (between: Value<"current">, plain: Value, other: Value | undefined): Value<"current"> => {
  const more = [plain, ...(other ? [other] : [])].filter((each) => !each.known || (each as Known).value !== 0);
  return more.length === 0 ? between : sum([between, ...more], "current", "I");
};

const otherOnEvery = (circuit: Circuit): Value<"current"> | undefined =>
  currentBeside(circuit, times(circuit.voltage, 1 / Math.sqrt(3), "1 ÷ √3"))[0];
