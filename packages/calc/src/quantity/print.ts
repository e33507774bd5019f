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
  const grouped = whole.length > 3 ? whole.replace(/\B(?=(\d{3})+(?!\d))/gu, ",") : whole;
  const shown = fraction?.endsWith("0") ? fraction.replace(/0+$/u, "") : fraction;
  // What rounds to nothing has no sign.
  if (!shown && grouped === "-0") return "0";
  const text = shown ? `${grouped}.${shown}` : grouped;
  return value < 0 ? text.replace(/^-/u, "−") : text;
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
export const printQuantity = (value: number, kind: Kind, system: System, unit?: Unit, digits?: number): string =>
  unit === undefined && digits === undefined
    ? kept[system](value, kind)
    : printed(value, kind, unit ?? unitFor(value, kind, system), digits);

function printed(value: number, kind: Kind, unit: Unit, digits?: number): string {
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

/** So many values of a kind are remembered. */
const MOST = 4_096;

/** Prints in the units of a system, and remembers: the panels of a repository are alike, and so are their figures. */
function keeping(system: System): (value: number, kind: Kind) => string {
  const byKind = new Map<Kind, Map<number, string>>();
  return (value, kind) => {
    let known = byKind.get(kind);
    if (!known || known.size >= MOST) {
      known = new Map();
      byKind.set(kind, known);
    }
    let text = known.get(value);
    if (text === undefined) {
      text = printed(value, kind, unitFor(value, kind, system));
      known.set(value, text);
    }
    return text;
  };
}

const kept: Readonly<Record<System, (value: number, kind: Kind) => string>> = {
  us: keeping("us"),
  metric: keeping("metric"),
};

/** A printer for one document, for the system of units its author writes in. */
export const printer =
  (system: System): Print =>
  (value, kind, unit) =>
    printQuantity(value, kind, system, unit);
