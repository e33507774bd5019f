import { leastOf, neutralMost, sum, type Value } from "@plumbmark/calc";
import { partValue } from "../reading/reader.js";
import type { Circuit } from "./circuit.js";
import type { Run } from "./run.js";

const onLeg = (runs: readonly Run[], leg: string): Value<"current"> =>
  sum(
    runs.filter(({ legs }) => legs === leg).map(({ current }) => current),
    "current",
    "I",
  );

/**
 * The most the neutral of a three-phase circuit carries from runs on one leg and neutral; undefined where there are none,
 * or no legs are written. What is not panels is not counted: no power factor and no leg is written for it.
 */
export function neutralOf(circuit: Circuit): Value<"current"> | undefined {
  const runs = circuit.runs.filter(({ legs }) => legs !== undefined && legs.length === 1);
  if (!circuit.threePhase || runs.length === 0) return undefined;
  const factors = runs
    .flatMap(({ panels }) => panels ?? [])
    .map(({ part, face }) => partValue(part, "power.factor", "factor", "power factor", face.named));
  return neutralMost.of({
    A: onLeg(runs, "A"),
    B: onLeg(runs, "B"),
    C: onLeg(runs, "C"),
    λ: leastOf(factors, "factor", "λ"),
  });
}
