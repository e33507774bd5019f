/** Copper building wire, A at 30 °C, and the greatest overcurrent device of the small sizes. */
export interface BuildingRow {
  readonly awg: string;
  /** NEC 240.4(D): limits the overcurrent device, not the ampacity. It does not cover flexible cords. */
  readonly mostBreaker?: number;
  readonly at60: number;
  readonly at75: number;
  readonly at90: number;
}

/** NEC Table 310.16 with 240.4(D) (sources `nec-310.16`, `nec-240.4d`). Before 2011 the 60 °C column was 20 and 25 A for 14 and 12 AWG. */
export const buildingRows: readonly BuildingRow[] = [
  { awg: "14", mostBreaker: 15, at60: 15, at75: 20, at90: 25 },
  { awg: "12", mostBreaker: 20, at60: 20, at75: 25, at90: 30 },
  { awg: "10", mostBreaker: 30, at60: 30, at75: 35, at90: 40 },
  { awg: "8", at60: 40, at75: 50, at90: 55 },
  { awg: "6", at60: 55, at75: 65, at90: 75 },
  { awg: "4", at60: 70, at75: 85, at90: 95 },
];

export const buildingRow = (awg: string): BuildingRow | undefined => buildingRows.find((row) => row.awg === awg);
