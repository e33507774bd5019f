import { leastOf, type Value } from "@plumbmark/calc";
import type { Design } from "../design.js";
import type { Circuit } from "../power/circuit.js";
import { otherLoadOf } from "../power/other-load.js";
import type { Run } from "../power/run.js";
import { numbered, under, type ValueEntry } from "./entries.js";
import { jumperValues } from "./jumpers.js";
import { settingNumber } from "./setting.js";

const legsAt = (path: string, legs: Readonly<Record<string, Value>>): readonly ValueEntry[] =>
  Object.entries(legs).map(([name, leg]) => [`${path}.legs.${name}`, () => leg]);

function valuesOfCircuit(circuit: Circuit): readonly ValueEntry[] {
  const { threePhase, build } = circuit;
  return [
    ...under(circuit.path, {
      voltage: () => circuit.voltage,
      breaker: () => circuit.breaker,
      residual: () => (circuit.hasResidual ? circuit.residual : undefined),
      load: () => circuit.load,
      current: () => circuit.current,
      "continuous-rating": () => circuit.continuousRating(),
      share: () => circuit.share,
      inrush: () => circuit.inrush,
      leakage: () => circuit.leakage,
      "wiring-breaker": () => circuit.wiringBreaker,
      "rides-through": () => circuit.peakRidden(settingNumber(build, "power.inrush", "multiple")),
      "other-load": () => otherLoadOf(circuit),
      "fault-loop": () => (build.practice === "iec" ? circuit.faultLoop : undefined),
      "fault-loop-most": () => (build.practice === "iec" ? circuit.faultLoopAllowed : undefined),
    }),
    ...(threePhase ? legsAt(circuit.path, circuit.legs) : []),
  ];
}

/** The weakest piece that the whole current of a run passes. */
function rating(run: Run): Value<"current"> {
  const pieces = run.ratings;
  const first = pieces[0]?.current.known ? pieces[0].current.value : undefined;
  const whole = pieces.filter(({ current }) => !current.known || current.value === first);
  return leastOf(
    whole.map((piece) => piece.rating),
    "current",
    "rating",
  );
}

function valuesOfRun(run: Run): readonly ValueEntry[] {
  const [feed, jumper] = run.cords;
  const many = (run.panels?.length ?? 0) > 1;
  const feeder = run.feederDrop;
  return [
    ...under(run.path, {
      panels: () => run.panelCount,
      voltage: () => run.voltage,
      current: () => run.current,
      "current-behind": () => (many ? run.currentBehind : undefined),
      rating: () => rating(run),
      protection: () => run.protection,
      "voltage-drop": () => run.voltageDrop,
      "drop-share": () => run.dropShare,
      "voltage-drop-in-all": () => (feeder ? run.dropInAll : undefined),
      "drop-share-in-all": () => (feeder ? run.shareInAll : undefined),
      "voltage-at-end": () => run.voltageAtEnd,
    }),
    ...numbered(`${run.path}.segments`, run.drops, (drop) => ({ "voltage-drop": () => drop })),
    ...under(`${run.path}.feed`, {
      length: () => run.feed.length,
      ampacity: () => feed?.allows,
      "largest-breaker": () => feed?.breaker,
    }),
    ...(many
      ? under(`${run.path}.jumper`, { ampacity: () => jumper?.allows, "largest-breaker": () => jumper?.breaker })
      : []),
    ...(many ? jumperValues(run, "power") : []),
  ];
}

export const powerValues = ({ circuits, runs, supplies }: Design): readonly ValueEntry[] => [
  ...circuits.flatMap(valuesOfCircuit),
  ...runs.flatMap(valuesOfRun),
  ...supplies.flatMap((supply) => [
    ...legsAt(supply.path, supply.legs),
    ...under(supply.path, {
      imbalance: () => supply.imbalance,
      current: () => supply.current,
      "continuous-rating": () => supply.continuousRating(),
    }),
  ]),
];
