import { awgArea, awgName } from "./awg.js";
import type { Kind } from "./kinds.js";
import { fromKept, type Unit, unitsOf } from "./units.js";

/** Which customary units results are printed in. */
export type System = "us" | "metric";

/** Prints a kept value: chooses the unit by kind and system, and as many digits as a working needs. */
export type Print = (value: number, kind: Kind, unit?: Unit) => string;

/** Four significant digits, thousands parted by a comma, no trailing zeros: what a pocket calculator needs to redo it. */
export function printNumber(value: number, digits = 4): string {
  if (!Number.isFinite(value)) return String(value);
  if (value === 0) return "0";
  const size = Math.abs(value);
  const places = Math.max(0, Math.min(10, digits - 1 - Math.floor(Math.log10(size))));
  const [whole, fraction] = value.toFixed(places).split(".") as [string, string | undefined];
  const grouped = whole.replace(/\B(?=(\d{3})+(?!\d))/gu, ",");
  const shown = fraction?.replace(/0+$/u, "");
  // What rounds to nothing has no sign.
  if (!shown && grouped === "-0") return "0";
  return (shown ? `${grouped}.${shown}` : grouped).replace(/^-/u, "−");
}

const SMALL_LENGTHS = { metric: ["mm", 0.1], us: ["in", 0.3048] } as const;

/** The unit a value of this kind is printed in by default. */
export function unitFor(value: number, kind: Kind, system: System): Unit {
  const all = unitsOf(kind);
  const named = (print: string): Unit => all.find((unit) => unit.print === print) as Unit;
  const size = Math.abs(value);
  if (kind === "length") {
    const [small, below] = SMALL_LENGTHS[system];
    return size < below && size > 0 ? named(small) : named(system === "us" ? "ft" : "m");
  }
  if (kind === "angle") return named(size < 1 && size > 0 ? "′" : "°");
  if (kind === "ratio") return named("%");
  if (kind === "areal-load") return named(system === "us" ? "lb/ft²" : "kPa");
  if (kind === "resistance-per-length") return named(system === "us" ? "Ω/kft" : "Ω/km");
  if (kind === "second-moment") return named(system === "us" ? "in⁴" : "cm⁴");
  if (kind === "section-modulus") return named(system === "us" ? "in³" : "cm³");
  if (kind === "frequency") return named(size >= 1e6 ? "MHz" : size >= 1e4 ? "kHz" : "Hz");
  if (kind === "data-rate") return named(size >= 1e9 ? "Gb/s" : size >= 1e6 ? "Mb/s" : "b/s");
  if (kind === "current") return named(size < 0.1 && size > 0 ? "mA" : "A");
  return all.find((unit) => unit.system === system) ?? (all[0] as Unit);
}

/** `12 AWG` for a cross-section that is a gauge's own, `2.5 mm²` for any other. */
function printConductor(area: number): string {
  for (let gauge = -3; gauge <= 40; gauge += 1)
    if (Math.abs(awgArea(gauge) / area - 1) < 1e-6) return `${awgName(gauge)} AWG`;
  return `${printNumber(area)} mm²`;
}

/** Value and unit as text, for instance `17.2 A`, `35 ft`, `80 %`. */
export function printQuantity(
  value: number,
  kind: Kind,
  system: System,
  unit: Unit = unitFor(value, kind, system),
  digits?: number,
): string {
  if (kind === "conductor") return printConductor(value);
  // Counts and pixels are whole things: they are printed in full.
  const whole = (kind === "count" || kind === "pixels") && Number.isInteger(value) ? 16 : undefined;
  const number = printNumber(fromKept(value, unit), digits ?? whole ?? 4);
  return unit.print === ""
    ? number
    : unit.print === "°" || unit.print === "′"
      ? `${number}${unit.print}`
      : `${number} ${unit.print}`;
}

/** A printer for one document, for the system of units its author writes in. */
export const printer =
  (system: System): Print =>
  (value, kind, unit) =>
    printQuantity(value, kind, system, unit);
