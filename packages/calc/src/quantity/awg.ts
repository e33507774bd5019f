/**
 * American wire gauge, ASTM B258: diameter = 0.005 in × 92^((36 − n)/39). Sizes above 1 are n = 0, −1, −2, −3,
 * written 1/0 (or 0), 2/0, 3/0, 4/0.
 */
export function awgDiameter(gauge: number): number {
  return 0.005 * 0.0254 * 92 ** ((36 - gauge) / 39);
}

/** Cross-section in mm² of a gauge number (ASTM B258). */
export function awgArea(gauge: number): number {
  const millimetres = awgDiameter(gauge) * 1000;
  return (Math.PI / 4) * millimetres * millimetres;
}

/** `12` → 12, `1/0` → 0, `4/0` → −3. Undefined when it is no gauge between 4/0 and 40. */
export function awgNumber(text: string): number | undefined {
  const aught = /^([1-4])\/0$/.exec(text.trim());
  if (aught) return 1 - Number(aught[1]);
  const gauge = Number(text);
  return Number.isInteger(gauge) && gauge >= 0 && gauge <= 40 ? gauge : undefined;
}

/** Gauge number → what people write: 12 → `12`, −3 → `4/0`. */
export const awgName = (gauge: number): string => (gauge <= 0 ? `${1 - gauge}/0` : String(gauge));
