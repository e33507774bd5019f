import type { Known } from "../formula/value.js";
import type { Print } from "../quantity/print.js";
import { unitByCode } from "../quantity/units.js";

/**
 * Workings that turn mass into force: with kilograms g has to be shown, while a pound of mass weighs a pound of
 * force, so feet and pounds need none.
 */
export interface Consistent {
  readonly us: boolean;
  /** A length always in feet or in metres, however small. */
  readonly length: (value: Known) => string;
  /** ` × 9.80665` where it is needed. */
  readonly g: string;
}

export function consistent(print: Print): Consistent {
  const us = /lb$/u.test(print(1, "mass"));
  const unit = unitByCode("length", us ? "[ft_i]" : "m");
  return {
    us,
    g: us ? "" : " × 9.80665",
    length: ({ value }) => print(value, "length", unit),
  };
}
