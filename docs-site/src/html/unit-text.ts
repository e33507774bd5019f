import { type Kind, siUnit } from "@plumbmark/calc";

/** How the codes of UCUM that are not written as they are spoken of are printed (SI Brochure, 9th edition, 5.2 and 5.4). */
const SIGNS: readonly (readonly [RegExp, string])[] = [
  [/\{.*\}/u, ""],
  [/^1$/u, ""],
  [/Ohm/u, "Ω"],
  [/Cel/u, "°C"],
  [/deg/u, "°"],
  [/\./u, "·"],
  [/2/u, "²"],
  [/3/u, "³"],
  [/4/u, "⁴"],
];

/** The unit values of a kind are kept in, as it is printed; empty for what has none. */
export const unitText = (kind: Kind): string =>
  SIGNS.reduce((text, [code, printed]) => text.replace(code, printed), siUnit(kind));

/** A formula is in plain units throughout; only stresses are kept in a multiple, and would come out a million too small. */
export const plainUnit = (kind: Kind): string => (kind === "stress" ? "Pa (1 MPa is 1,000,000 Pa)" : unitText(kind));
