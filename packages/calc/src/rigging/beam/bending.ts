import type { Known, Step } from "../../formula/value.js";
import { printNumber } from "../../quantity/print.js";
import { GRAVITY } from "../gravity.js";
import { deflectionFrom } from "../section/strength.js";
import { totalLoad } from "./beam.js";
import { deepest } from "./deflection.js";
import type { Extreme, SolvedBeam } from "./solve.js";
import { termsOf } from "./terms.js";

const POUND = 0.45359237;
const FOOT = 0.3048;
const six = (value: number): string => printNumber(value, 6);
const isUs: (print: Parameters<Step["show"]>[0]) => boolean = (print) => /lb$/u.test(print(1, "mass"));

/** What the moments of a bar are told from: solved with its stiffness, or by statics from known reactions. */
type Loaded = Pick<SolvedBeam, "beam" | "reactions" | "greatestMoment" | "leastMoment">;

/** The greatest bending moment either way, in the unit of the loads × metre. */
export function worstMoment({ greatestMoment, leastMoment }: Pick<Loaded, "greatestMoment" | "leastMoment">): Extreme {
  return Math.abs(leastMoment.value) > Math.abs(greatestMoment.value) ? leastMoment : greatestMoment;
}

/** Forces left of a place with their arms: every reaction, and every load. */
function leftOf({ beam, reactions }: Loaded, at: number) {
  const nothing = 1e-9 * Math.abs(totalLoad(beam));
  const lifts = beam.supports.flatMap((place, index) =>
    place < at - 1e-9 && Math.abs(reactions[index]!) > nothing ? [{ load: reactions[index]!, arm: at - place }] : [],
  );
  return { lifts, down: termsOf(beam, at).map(({ load, at: place }) => ({ load, arm: at - place })) };
}

/** The greatest bending moment as a value in N·m. Loads of the beam have to be kilograms; `when` says in which case. */
export function momentValue(solved: Loaded, inputs: readonly Known[], when = ""): Known {
  const { at, value } = worstMoment(solved);
  const show: Step["show"] = (print) => {
    const us = isUs(print);
    const { lifts, down } = leftOf(solved, at);
    const term = ({ load, arm }: { load: number; arm: number }): string =>
      us ? `${six(load / POUND)} lb × ${six(arm / FOOT)} ft` : `${six(load)} kg × ${six(arm)} m`;
    const sum = [lifts.map(term).join(" + ") || "0", ...down.map(term)].join(" − ");
    return us ? `${when}|${sum}|` : `${when}|${sum}| × 9.80665`;
  };
  return {
    known: true,
    value: Math.abs(value) * GRAVITY,
    kind: "moment",
    origin: {
      from: "step",
      step: {
        formula: "M = |ΣR × arm − ΣW × arm| × g, left of where it is greatest",
        show,
        source: "statics",
        inputs,
      },
    },
  };
}

/**
 * How far the bar sinks between two places, metres. Loads of the beam in kilograms; E in MPa, I in m⁴.
 * EI × deflection comes from integrating the moments twice.
 */
export function deflectionValue(
  solved: SolvedBeam,
  between: readonly [number, number],
  E: Known,
  I: Known,
  inputs: readonly Known[],
): Known {
  const flexed = deepest(solved, ...between).value;
  const value = deflectionFrom(flexed * GRAVITY, E.value, I.value);
  const show: Step["show"] = (print) => {
    const us = isUs(print);
    const small = us ? value < FOOT : value < 0.1;
    const stiff = `(${print(E.value, "stress")} × ${print(I.value, "second-moment")})`;
    // lb·ft³ ÷ (ksi × in⁴) × 1.728 are inches; N·m³ ÷ (MPa × cm⁴) × 100 are metres.
    return us
      ? `${six(flexed / POUND / FOOT ** 3)} lb·ft³ ÷ ${stiff} × 1.728${small ? "" : " ÷ 12"}`
      : `${six(flexed)} kg·m³ × 9.80665 ÷ ${stiff} × ${small ? "100,000" : "100"}`;
  };
  return {
    known: true,
    value,
    kind: "length",
    origin: {
      from: "step",
      step: { formula: "δ = EIδ ÷ (E × I), EIδ = ∬M dx dx", show, source: "statics", inputs: [E, I, ...inputs] },
    },
  };
}
