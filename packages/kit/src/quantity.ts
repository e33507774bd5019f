import { type Kind, type Known, readQuantity, tabled } from "@plumbmark/calc";

/** Units a quantity can be told by alone. A unit of two kinds (`mm2`, `W` of heat) is not here: use `quantityOf`. */
const KIND_OF = {
  mm: "length",
  cm: "length",
  m: "length",
  km: "length",
  ft: "length",
  in: "length",
  kg: "mass",
  g: "mass",
  t: "mass",
  lb: "mass",
  oz: "mass",
  N: "force",
  kN: "force",
  lbf: "force",
  "kg/m": "mass-per-length",
  "lb/ft": "mass-per-length",
  "kN/m2": "areal-load",
  kPa: "areal-load",
  "lb/ft2": "areal-load",
  "N m": "moment",
  "lb-ft": "moment",
  V: "voltage",
  mV: "voltage",
  A: "current",
  mA: "current",
  W: "power",
  kW: "power",
  VA: "apparent-power",
  kVA: "apparent-power",
  AWG: "conductor",
  Hz: "frequency",
  "Gb/s": "data-rate",
  "Mb/s": "data-rate",
  bit: "colour-depth",
  px: "pixels",
  s: "time",
  min: "time",
  h: "time",
  "cd/m2": "luminance",
  nit: "luminance",
  lx: "illuminance",
  deg: "angle",
  arcmin: "angle",
  dB: "loss",
  "%": "ratio",
} as const satisfies Readonly<Record<string, Kind>>;

type Units = typeof KIND_OF;

/** The kind of quantity a text such as `20 A` or `10 ft 6 in` is; `never` when its unit is not known. */
export type KindOf<T extends string> = T extends `${number} ft ${number} in`
  ? "length"
  : T extends `${number} ${infer U}`
    ? U extends keyof Units
      ? Units[U]
      : never
    : never;

/** The text itself when its unit is known, else a type that names the units there are. */
type Readable<T extends string> = [KindOf<T>] extends [never] ? `${number} ${keyof Units}` : T;

const unitOf = (text: string): string => text.trim().replace(/^[^\s]+\s+/u, "");

/**
 * A quantity of the author's own: `quantity("20 A")`. Its kind is known to the compiler, so that it cannot be compared
 * with one of another kind. `what` says in the working what it is; it rests on the house's own practice.
 * @throws RangeError when the text cannot be read
 */
export function quantity<const T extends string>(text: Readable<T>, what: string = text): Known<KindOf<T>> {
  const kind = / ft .+ in$/u.test(text) ? "length" : KIND_OF[unitOf(text) as keyof Units];
  if (kind === undefined) throw new RangeError(`\`${text}\` has no unit a quantity can be told by; use quantityOf.`);
  return quantityOf(kind, text, what) as Known<KindOf<T>>;
}

/**
 * A quantity of a kind that is named: `quantityOf("conductor", "2.5 mm2")`, `quantityOf("factor", "1.5")`.
 * @throws RangeError when the text is no quantity of that kind
 */
export function quantityOf<const K extends Kind>(kind: K, text: string, what: string = text): Known<K> {
  const reading = readQuantity(text, [kind]);
  if (!reading.ok) throw new RangeError(`Found ${reading.found}; write ${reading.allowed}.`);
  return { ...tabled(reading.quantity.value, kind, "house", what), unit: reading.quantity.unit };
}
