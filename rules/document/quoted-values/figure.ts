import { fromKept, type Known, readQuantity } from "@plumbmark/calc";

/** Half a unit in the last digit that is written: `186` is met by 185.5 to 186.5. */
const rounding = (text: string): number => 0.5 * 10 ** -(/\.(\d+)/u.exec(text)?.[1]?.length ?? 0);

const readingOf = (text: string, value: Known) => readQuantity(text.replaceAll(",", ""), [value.kind]);

/** Whether a figure is that of a value, to the precision it is written with; undefined where it is of another unit. */
export function figureAgrees(text: string, value: Known): boolean | undefined {
  const reading = readingOf(text, value);
  if (!reading.ok) return undefined;
  const { unit, value: kept } = reading.quantity;
  return Math.abs(fromKept(kept, unit) - fromKept(value.value, unit)) <= rounding(text) * (1 + 1e-9);
}

const ONE = /^([-−]?)(\d[\d,]*)(\.\d+)?(\D*)$/u;
/** `13 ft 6 in`, `13' 6.5"`, `13 ft 6-3/4 in` */
const FEET = /^(\d+)(\s*(?:ft|')\s*)(\d+)(\.\d+)?(?:-\d+\/(\d+))?(\s*(?:in|"))$/u;
const INCHES_PER_FOOT = 12;

const grouped = (digits: string): string => digits.replace(/\B(?=(\d{3})+(?!\d))/gu, ",");

/** `6-3/4` of 6.75 in quarters; whole inches have no fraction. */
function inFractions(inches: number, below: number): string {
  const above = Math.round(inches * below);
  const [whole, rest] = [Math.floor(above / below), above % below];
  if (rest === 0) return String(whole);
  const halvings = [64, 32, 16, 8, 4, 2].find((each) => rest % each === 0 && below % each === 0) ?? 1;
  return `${whole}-${rest / halvings}/${below / halvings}`;
}

function inFeet(match: RegExpExecArray, metres: number): string {
  const [, , feetMark, , decimals, below, inchMark] = match as unknown as [
    string,
    string,
    string,
    string,
    string?,
    string?,
    string?,
  ];
  const step = below === undefined ? 10 ** ((decimals?.length ?? 1) - 1) : Number(below);
  // Rounded as a whole: what is a foot with its inches rounded up is no 11 ft 12 in.
  const inches = Math.round((metres / 0.0254) * step) / step;
  const feet = Math.floor(inches / INCHES_PER_FOOT + 1e-9);
  const rest = Math.max(0, inches - feet * INCHES_PER_FOOT);
  const text = below === undefined ? rest.toFixed((decimals?.length ?? 1) - 1) : inFractions(rest, step);
  return `${feet}${feetMark}${text}${inchMark}`;
}

/**
 * A quoted figure brought up to date: in the unit, to the precision and in the form it is written with. Undefined where
 * it is of no unit of the value's kind, or of a form that cannot be kept.
 */
export function upToDate(text: string, value: Known): string | undefined {
  const reading = readingOf(text, value);
  if (!reading.ok) return undefined;
  const feet = value.value >= 0 ? FEET.exec(text) : null;
  if (feet) return inFeet(feet, value.value);
  const one = ONE.exec(text);
  if (!one) return undefined;
  const [, minus, whole, decimals = "", unit] = one as unknown as [string, string, string, string | undefined, string];
  const [digits, fraction] = Math.abs(fromKept(value.value, reading.quantity.unit))
    .toFixed(Math.max(0, decimals.length - 1))
    .split(".") as [string, string | undefined];
  const number = `${whole.includes(",") ? grouped(digits) : digits}${fraction === undefined ? "" : `.${fraction}`}`;
  const isNothing = /^[0,.]*$/u.test(number);
  const made = `${value.value < 0 && !isNothing ? minus || "-" : ""}${number}${unit}`;
  // Nothing is written that this very rule would not take.
  return figureAgrees(made, value) ? made : undefined;
}
