import { printer } from "@plumbmark/calc";
import { type Inspected, worstOf } from "@plumbmark/core";
import type { Figures } from "../record/differences.js";

const UNKNOWN = "cannot be told";

/** `8 % (power.circuit-load)`: how far the check nearest its limit is from it, over it when negative. */
function marginOf({ entry, system }: Inspected): string {
  const worst = worstOf(entry.checks);
  if (worst?.share === undefined) return UNKNOWN;
  return `${printer(system)(1 - worst.share, "ratio")} (${worst.rule})`;
}

/** Weight, power and least margin of a build that was inspected with every check listed. */
export function figuresOf(inspected: Inspected): Figures {
  const { build, system } = inspected;
  const print = printer(system);
  const shown = (path: string): string => {
    const value = build.valueAt(path);
    return value?.known ? print(value.value, value.kind) : UNKNOWN;
  };
  return { weight: shown("totals.mass"), power: shown("totals.power-maximum"), margin: marginOf(inspected) };
}
