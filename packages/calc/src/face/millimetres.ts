import type { Known } from "../formula/value.js";
import type { Print } from "../quantity/print.js";
import { unitByCode } from "../quantity/units.js";

const MILLIMETRE = unitByCode("length", "mm");

/**
 * Panels and pitches are made in millimetres: shown in feet they are rounded, and the working would no longer
 * multiply out on a pocket calculator.
 */
export const inMillimetres = (length: Known, print: Print): string => print(length.value, "length", MILLIMETRE);

/** What millimetres are divided by to come out in the unit the result is printed in; nothing for metric units. */
export function fromMillimetres(metres: number, print: Print): string {
  const shown = print(metres, "length");
  if (/\bft$/u.test(shown)) return " ÷ 304.8 mm/ft";
  return /\bin$/u.test(shown) ? " ÷ 25.4 mm/in" : "";
}
