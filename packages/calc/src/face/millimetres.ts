import type { Known } from "../formula/value.js";
import type { Print } from "../quantity/print.js";
import { unitByCode } from "../quantity/units.js";

const MILLIMETRE = unitByCode("length", "mm");

/**
 * Panels and pitches are made in millimetres: shown in feet they are rounded, and the working would no longer
 * multiply out on a pocket calculator.
 */
export const inMillimetres = (length: Known, print: Print): string => print(length.value, "length", MILLIMETRE);
