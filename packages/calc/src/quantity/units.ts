import type { Kind } from "./kinds.js";

/** A unit people write. `factor` and `offset` lead to the unit the kind is kept in: kept = written × factor + offset. */
export interface Unit {
  /** UCUM code. */
  readonly code: string;
  readonly kind: Kind;
  readonly factor: number;
  readonly offset?: number;
  /** How it is printed. */
  readonly print: string;
  /** Other spellings, compared without regard to case where no other unit differs by case alone. */
  readonly spellings: readonly string[];
  readonly system: "us" | "metric" | "both";
}

const INCH = 0.0254;
const FOOT = 0.3048;
const POUND = 0.45359237;
const GRAVITY = 9.80665;
const LBF = POUND * GRAVITY;
const PSF = LBF / (FOOT * FOOT);
const BTU_PER_HOUR = 1055.05585262 / 3600;

const unit = (
  kind: Kind,
  code: string,
  factor: number,
  print: string,
  spellings = "",
  system: Unit["system"] = "both",
): Unit => ({ kind, code, factor, print, spellings: spellings === "" ? [] : spellings.split("|"), system });

/**
 * Exact factors: international yard and pound (1959), standard gravity (CGPM 1901), Btu_IT; UCUM 2.2 codes.
 * The first unit of a kind with its own system is the one printed by default in that system.
 */
export const units: readonly Unit[] = [
  unit("length", "m", 1, "m", "metre|meter|metres|meters", "metric"),
  unit("length", "mm", 0.001, "mm", "millimetre|millimeter|millimetres|millimeters", "metric"),
  unit("length", "cm", 0.01, "cm", "centimetre|centimeter", "metric"),
  unit("length", "km", 1000, "km", "", "metric"),
  unit("length", "[ft_i]", FOOT, "ft", "'|′|foot|feet", "us"),
  unit("length", "[in_i]", INCH, "in", '"|″|inch|inches', "us"),
  unit("length", "[yd_i]", 3 * FOOT, "yd", "yard|yards", "us"),
  unit("area", "m2", 1, "m²", "m2|m^2", "metric"),
  unit("area", "[sft_i]", FOOT * FOOT, "ft²", "ft2|sq ft|sqft", "us"),
  unit("mass", "kg", 1, "kg", "", "metric"),
  unit("mass", "g", 0.001, "g", "", "metric"),
  unit("mass", "t", 1000, "t", "tonne|tonnes|metric ton|metric tons", "metric"),
  unit("mass", "[lb_av]", POUND, "lb", "lbs|pound|pounds", "us"),
  unit("mass", "[oz_av]", POUND / 16, "oz", "", "us"),
  unit("mass", "[ston_av]", 2000 * POUND, "short ton", "short tons", "us"),
  unit("mass", "[lton_av]", 2240 * POUND, "long ton", "long tons", "us"),
  unit("force", "N", 1, "N", "", "metric"),
  unit("force", "kN", 1000, "kN", "", "metric"),
  unit("force", "daN", 10, "daN", "", "metric"),
  unit("force", "kgf", GRAVITY, "kgf", "", "metric"),
  unit("force", "[lbf_av]", LBF, "lbf", "", "us"),
  unit("mass-per-length", "kg/m", 1, "kg/m", "", "metric"),
  unit("mass-per-length", "g/m", 0.001, "g/m", "", "metric"),
  unit("mass-per-length", "[lb_av]/[ft_i]", POUND / FOOT, "lb/ft", "plf", "us"),
  unit("areal-load", "Pa", 1, "Pa", "", "metric"),
  unit("areal-load", "kPa", 1000, "kPa", "", "metric"),
  unit("areal-load", "kN/m2", 1000, "kN/m²", "kN/m2", "metric"),
  unit("areal-load", "N/m2", 1, "N/m²", "N/m2", "metric"),
  unit("areal-load", "kg/m2", GRAVITY, "kg/m²", "kg/m2", "metric"),
  unit("areal-load", "[lbf_av]/[sft_i]", PSF, "lb/ft²", "lb/ft2|psf|lbf/ft2|lb/sq ft", "us"),
  unit("stress", "MPa", 1, "MPa", "N/mm2|N/mm²", "metric"),
  unit("stress", "GPa", 1000, "GPa", "kN/mm2|kN/mm²", "metric"),
  unit("stress", "k[psi]", 6.894757293168, "ksi", "", "us"),
  unit("stress", "[psi]", 0.006894757293168, "psi", "", "us"),
  unit("moment", "N.m", 1, "N·m", "Nm|N m", "metric"),
  unit("moment", "kN.m", 1000, "kN·m", "kNm|kN m", "metric"),
  unit("moment", "[lbf_av].[ft_i]", LBF * FOOT, "lb·ft", "lb-ft|ft-lb|lbf·ft|lbf.ft", "us"),
  unit("moment", "[lbf_av].[in_i]", LBF * INCH, "lb·in", "lb-in|in-lb", "us"),
  unit("second-moment", "m4", 1, "m⁴", "m4", "both"),
  unit("second-moment", "cm4", 1e-8, "cm⁴", "cm4", "metric"),
  unit("second-moment", "[in_i]4", INCH ** 4, "in⁴", "in4", "us"),
  unit("section-modulus", "m3", 1, "m³", "m3", "both"),
  unit("section-modulus", "cm3", 1e-6, "cm³", "cm3", "metric"),
  unit("section-modulus", "[in_i]3", INCH ** 3, "in³", "in3", "us"),
  unit("voltage", "V", 1, "V", "volt|volts"),
  unit("voltage", "kV", 1000, "kV"),
  unit("voltage", "mV", 0.001, "mV"),
  unit("current", "A", 1, "A", "amp|amps|ampere|amperes"),
  unit("current", "mA", 0.001, "mA"),
  unit("power", "W", 1, "W", "watt|watts"),
  unit("power", "kW", 1000, "kW"),
  unit("apparent-power", "V.A", 1, "VA"),
  unit("apparent-power", "kV.A", 1000, "kVA"),
  unit("heat-rate", "W", 1, "W", "", "metric"),
  unit("heat-rate", "[Btu_IT]/h", BTU_PER_HOUR, "BTU/h", "btuh", "us"),
  unit("resistance", "Ohm", 1, "Ω", "ohm|ohms"),
  unit("resistance", "mOhm", 0.001, "mΩ", "mohm"),
  unit("resistance-per-length", "Ohm/m", 1, "Ω/m", "ohm/m"),
  unit("resistance-per-length", "Ohm/km", 0.001, "Ω/km", "ohm/km", "metric"),
  unit("resistance-per-length", "Ohm/k[ft_i]", 0.001 / FOOT, "Ω/kft", "ohm/kft", "us"),
  unit("conductor", "mm2", 1, "mm²", "mm2|sqmm", "metric"),
  unit("frequency", "Hz", 1, "Hz"),
  unit("frequency", "kHz", 1e3, "kHz"),
  unit("frequency", "MHz", 1e6, "MHz"),
  unit("data-rate", "bit/s", 1, "b/s", "bit/s"),
  unit("data-rate", "Mbit/s", 1e6, "Mb/s", "Mbit/s"),
  unit("data-rate", "Gbit/s", 1e9, "Gb/s", "Gbit/s"),
  unit("colour-depth", "bit", 1, "bit", "bits"),
  unit("pixels", "{pixel}", 1, "px", "pixel|pixels"),
  unit("time", "s", 1, "s", "second|seconds"),
  unit("time", "ms", 0.001, "ms"),
  unit("time", "min", 60, "min", "minute|minutes"),
  unit("time", "h", 3600, "h", "hour|hours"),
  unit("temperature", "Cel", 1, "°C", "C|degC", "metric"),
  { ...unit("temperature", "[degF]", 5 / 9, "°F", "F|degF", "us"), offset: -160 / 9 },
  unit("luminance", "cd/m2", 1, "cd/m²", "cd/m2|nit|nits"),
  unit("illuminance", "lx", 1, "lx", "lux"),
  unit("illuminance", "[ft_i]-c", 10.763910416709722, "fc", "footcandle|footcandles"),
  unit("angle", "deg", 1, "°", "deg|degree|degrees"),
  unit("angle", "'", 1 / 60, "′", "arcmin|arc-minutes"),
  unit("loss", "dB", 1, "dB"),
  unit("ratio", "1", 1, ""),
  unit("ratio", "%", 0.01, "%", "percent|per cent"),
  unit("factor", "{factor}", 1, "", ""),
  unit("count", "{count}", 1, "", ""),
];

export const unitsOf = (kind: Kind): readonly Unit[] => units.filter((each) => each.kind === kind);

/** The unit with this UCUM code and kind; a programming mistake when there is none. */
export function unitByCode(kind: Kind, code: string): Unit {
  const found = units.find((each) => each.kind === kind && each.code === code);
  if (!found) throw new Error(`no unit ${code} of kind ${kind}`);
  return found;
}

/** From a number in `unit` to the unit the kind is kept in. */
export const toKept = (written: number, unit: Unit): number => written * unit.factor + (unit.offset ?? 0);

/** From the unit the kind is kept in to `unit`. */
export const fromKept = (kept: number, unit: Unit): number => (kept - (unit.offset ?? 0)) / unit.factor;
