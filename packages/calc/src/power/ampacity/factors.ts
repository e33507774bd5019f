/** Insulation temperature column. Cords are 60 °C unless marked. */
export type TemperatureColumn = 60 | 75 | 90;

export const ambientRows: readonly {
  readonly to: number;
  readonly factor: Readonly<Record<TemperatureColumn, number>>;
}[] = [
  { to: 30, factor: { 60: 1, 75: 1, 90: 1 } },
  { to: 35, factor: { 60: 0.91, 75: 0.94, 90: 0.96 } },
  { to: 40, factor: { 60: 0.82, 75: 0.88, 90: 0.91 } },
  { to: 45, factor: { 60: 0.71, 75: 0.82, 90: 0.87 } },
];

/**
 * Ambient factor, NEC Table 310.15(B)(1), base 30 °C. Below 26 °C the table allows more; 1 is used, which is the safe
 * side. Undefined above 45 °C, where no row is at hand.
 */
export const ambientFactor = (celsius: number, column: TemperatureColumn = 60): number | undefined =>
  ambientRows.find((row) => celsius <= row.to)?.factor[column];

export const countRows: readonly { readonly to: number; readonly factor: number }[] = [
  { to: 3, factor: 1 },
  { to: 6, factor: 0.8 },
  { to: 9, factor: 0.7 },
  { to: 20, factor: 0.5 },
  { to: 30, factor: 0.45 },
  { to: 40, factor: 0.4 },
  { to: Number.POSITIVE_INFINITY, factor: 0.35 },
];

/** Factor for the number of current-carrying conductors, NEC Table 400.5(A)(3); on the three-conductor value. */
export const countFactor = (conductors: number): number =>
  (countRows.find((row) => conductors <= row.to) as { factor: number }).factor;
