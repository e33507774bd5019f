/** Ampacity for 1, 2 and 3 current-carrying conductors, A at 30 °C. */
export type PortableCells = readonly [one: number, two: number, three: number];

export interface PortableRow {
  readonly awg: string;
  /** Not at hand for 8 and 6 AWG. */
  readonly at60?: PortableCells;
  readonly at75: PortableCells;
  readonly at90: PortableCells;
}

/** NEC Table 400.5(A)(2): types SC, SCE, SCT, PPE, G and W (source `nec-400.5a2`). */
export const portableRows: readonly PortableRow[] = [
  { awg: "8", at75: [70, 65, 57], at90: [80, 74, 65] },
  { awg: "6", at75: [95, 88, 77], at90: [105, 99, 87] },
  { awg: "4", at60: [105, 96, 84], at75: [125, 115, 101], at90: [140, 130, 114] },
  { awg: "2", at60: [140, 128, 112], at75: [170, 152, 133], at90: [190, 174, 152] },
  { awg: "1/0", at60: [195, 173, 151], at75: [230, 207, 181], at90: [260, 234, 205] },
  { awg: "2/0", at60: [225, 199, 174], at75: [265, 238, 208], at90: [300, 271, 237] },
  { awg: "3/0", at60: [260, 230, 201], at75: [310, 275, 241], at90: [350, 313, 274] },
  { awg: "4/0", at60: [300, 265, 232], at75: [360, 317, 277], at90: [405, 361, 316] },
];
