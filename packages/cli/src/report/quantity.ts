import { printNumber, units } from "@plumbmark/calc";

/** A number with its UCUM code as people print it: four significant digits, the trade's sign of the unit. */
export function printMeasure({ value, unit }: { readonly value: number; readonly unit: string }): string {
  const bare = unit.replace(/\{[^}]*\}/gu, "");
  const sign = units.find((each) => each.code === unit)?.print ?? bare;
  if (sign === "" || sign === "1") return printNumber(value);
  return sign === "°" || sign === "′" ? `${printNumber(value)}${sign}` : `${printNumber(value)} ${sign}`;
}
