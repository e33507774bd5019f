import {
  fromKept,
  gapsOf,
  guessMark,
  printNumber,
  printQuantity,
  type System,
  unitFor,
  type Value,
} from "@plumbmark/calc";

export const UNWRITTEN = "not written down";

export const UNTOLD = "cannot be told";

/** A value as its author wrote it, or as it was computed, in the document's units; a guess has its sign behind it. */
export function writtenText(value: Value, system: System, otherwise = UNWRITTEN): string {
  if (!value.known) return otherwise;
  if (value.origin.from === "written" && value.origin.text.trim() !== "") {
    const bound = value.sure === undefined || value.sure === "guess" ? "" : `${value.sure} `;
    return `${bound}${value.origin.text.trim()}${guessMark(value)}`;
  }
  const assumed = value.sure === "assumed" ? "assumed " : "";
  return `${assumed}${printQuantity(value.value, value.kind, system)}${guessMark(value)}`;
}

/** Whether its author wrote feet, with or without inches: `1 ft`, `3 ft 10 in`. */
export const writtenInFeet = (value: Value): boolean =>
  value.known && value.origin.from === "written" && /^[\d\s./-]+(?:ft|')/u.test(value.origin.text);

const EIGHTH = 0.0254 / 8;
const FRACTIONS = ["", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"];

/** A length; in feet and inches where that is asked for and it is a whole number of eighths of an inch. */
export function lengthText(metres: number, system: System, feetAndInches: boolean): string {
  const eighths = Math.round(metres / EIGHTH);
  if (!feetAndInches || Math.abs(metres - eighths * EIGHTH) > 1e-6) return printQuantity(metres, "length", system);
  const [feet, inches, rest] = [Math.floor(eighths / 96), Math.floor((eighths % 96) / 8), eighths % 8];
  const fraction = FRACTIONS[rest] as string;
  const inch = [
    ...(inches > 0 || fraction === "" ? [String(inches)] : []),
    ...(fraction === "" ? [] : [fraction]),
  ].join("-");
  return [...(feet > 0 ? [`${feet} ft`] : []), ...(feet > 0 && inch === "0" ? [] : [`${inch} in`])].join(" ");
}

/** A computed value: without what it needs it cannot be told. */
export const resultText = (value: Value, system: System): string => writtenText(value, system, UNTOLD);

/** What is missing for these values, in words for the foot of a drawing. */
export function gapNotes(values: readonly Value[]): readonly string[] {
  return [
    ...new Set(gapsOf(values).map((gap) => gap.because ?? `${gap.of ?? "The document"}: ${gap.what} ${UNWRITTEN}.`)),
  ];
}

const DIGITS = 4;

/** A mass that is borne, in the document's units: never less than it is, which rounding to the nearest might print. */
export function massRoundedUp(kilograms: number, system: System): string {
  const unit = unitFor(kilograms, "mass", system);
  const value = fromKept(kilograms, unit);
  const step = value > 0 ? 10 ** (Math.floor(Math.log10(value)) + 1 - DIGITS) : 1;
  // What is a whole number of steps already stays: a computation leaves it off by parts of a million million.
  return `${printNumber(Math.ceil(value / step - 1e-9) * step, DIGITS)} ${unit.print}`;
}

/** What is borne, as it is printed everywhere. */
export const weightText = (value: Value, system: System): string =>
  value.known ? `${massRoundedUp(value.value, system)}${guessMark(value)}` : UNTOLD;
