/** How building wiring is laid: in a thermally insulated wall, in conduit on a wall, or clipped straight to it. */
export type Laid = "A2" | "B2" | "C";

/** The ways of laying the tables at hand have. */
export const LAID: readonly Laid[] = ["A2", "B2", "C"];

/** Two loaded conductors (single phase) and three (three phase), A at 30 °C. */
export type Loaded = readonly [two: number, three: number];

/** One size of multicore cable, copper, PVC insulation (70 °C). */
export interface IecRow extends Readonly<Record<Laid, Loaded>> {
  readonly mm2: number;
}

/**
 * IEC 60364-5-52 Tables B.52.2 and B.52.4 as SANS 10142-1:2019 Table 6.3(a), p. 99, prints them (its methods 1, 2 and
 * 3 are A2, B2 and C). The columns of three conductors are also in an instruction book for air compressors,
 * 2920 7104 10, p. 90, rounded to whole amperes.
 */
export const iecRows: readonly IecRow[] = [
  { mm2: 1.5, A2: [14, 13], B2: [16.5, 15], C: [19.5, 17.5] },
  { mm2: 2.5, A2: [18.5, 17.5], B2: [23, 20], C: [27, 24] },
  { mm2: 4, A2: [25, 23], B2: [30, 27], C: [36, 32] },
  { mm2: 6, A2: [32, 29], B2: [38, 34], C: [46, 41] },
  { mm2: 10, A2: [43, 39], B2: [52, 46], C: [63, 57] },
  { mm2: 16, A2: [57, 52], B2: [69, 62], C: [85, 76] },
];
