import type { System } from "@plumbmark/calc";

const INCH = 0.0254;
/** Quarter inches, the finest a tape on site is read to. */
const QUARTERS = ["", "1/4", "1/2", "3/4"] as const;

/** A length as a person writes it: `10 ft 6 in` to the quarter inch, or `3.2 m` to the millimetre. */
export function lengthAsWritten(metres: number, system: System): string {
  if (system === "metric") {
    const millimetres = Math.round(metres * 1000);
    return Math.abs(millimetres) < 1000 ? `${millimetres} mm` : `${millimetres / 1000} m`;
  }
  const quarters = Math.round((Math.abs(metres) / INCH) * 4);
  const sign = metres < 0 && quarters > 0 ? "-" : "";
  const feet = Math.floor(quarters / 48);
  const inches = Math.floor((quarters % 48) / 4);
  const part = QUARTERS[quarters % 4] as string;
  const inch = part === "" ? `${inches}` : inches === 0 ? part : `${inches}-${part}`;
  if (quarters === 0) return "0 ft";
  if (feet === 0) return `${sign}${inch} in`;
  return inches === 0 && part === "" ? `${sign}${feet} ft` : `${sign}${feet} ft ${inch} in`;
}

/** Next whole step at or above a length: half feet, or tenths of a metre. */
export function roundedUp(metres: number, system: System): number {
  const step = system === "us" ? 6 * INCH : 0.1;
  return Math.ceil(metres / step - 1e-6) * step;
}
