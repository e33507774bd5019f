/** One gauge of NEC Chapter 9 Table 8, uncoated copper at 75 °C, direct current, one conductor one way. */
export interface GaugeRow {
  readonly awg: string;
  readonly circularMils: number;
  /** Ω per 1000 ft: the printed master; every other unit is derived from it. */
  readonly stranded: number;
  readonly solid?: number;
  /** Stranded and coated (tinned). */
  readonly coated?: number;
}

/** NEC Chapter 9 Table 8 (source `nec-ch9-t8`). Cords are stranded. */
export const gaugeRows: readonly GaugeRow[] = [
  { awg: "18", circularMils: 1620, solid: 7.77, stranded: 7.95, coated: 8.45 },
  { awg: "16", circularMils: 2580, solid: 4.89, stranded: 4.99, coated: 5.29 },
  { awg: "14", circularMils: 4110, solid: 3.07, stranded: 3.14, coated: 3.26 },
  { awg: "12", circularMils: 6530, solid: 1.93, stranded: 1.98, coated: 2.05 },
  { awg: "10", circularMils: 10380, solid: 1.21, stranded: 1.24, coated: 1.29 },
  { awg: "8", circularMils: 16510, solid: 0.764, stranded: 0.778, coated: 0.809 },
  { awg: "6", circularMils: 26240, stranded: 0.491, coated: 0.51 },
  { awg: "4", circularMils: 41740, stranded: 0.308 },
  { awg: "3", circularMils: 52620, stranded: 0.245 },
  { awg: "2", circularMils: 66360, stranded: 0.194 },
  { awg: "1", circularMils: 83690, stranded: 0.154 },
  { awg: "1/0", circularMils: 105600, stranded: 0.122 },
  { awg: "2/0", circularMils: 133100, stranded: 0.0967 },
  { awg: "3/0", circularMils: 167800, stranded: 0.0766 },
  { awg: "4/0", circularMils: 211600, stranded: 0.0608 },
];

export const gaugeRow = (awg: string): GaugeRow | undefined => gaugeRows.find((row) => row.awg === awg);

/** Copper coefficient on a base of 75 °C, per K (Table 8 note 2); aluminium 0.00330. */
export const ALPHA_75 = { copper: 0.00323, aluminium: 0.0033 } as const;

/** Ω/kft at 75 °C → Ω/kft at `celsius`. */
export const gaugeAt = (at75: number, celsius: number, metal: keyof typeof ALPHA_75 = "copper"): number =>
  at75 * (1 + ALPHA_75[metal] * (celsius - 75));
