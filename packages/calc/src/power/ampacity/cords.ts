import type { SourceId } from "../../sources/index.js";

/** One gauge of NEC Table 400.5(A)(1), A at 30 °C: S and SJ families, copper. The equipment ground is not counted. */
export interface CordRow {
  readonly awg: string;
  /** Column A: three current-carrying conductors. */
  readonly three?: number;
  readonly threeSource: SourceId;
  /** Column B: two current-carrying conductors. */
  readonly two: number;
  readonly twoSource: SourceId;
}

const row = (
  awg: string,
  three: number | undefined,
  two: number,
  from: { three?: "memory"; two?: "memory" } = {},
): CordRow => ({
  awg,
  ...(three === undefined ? {} : { three }),
  threeSource: from.three ? "nec-400.5a1-memory" : "nec-400.5a1",
  two,
  twoSource: from.two ? "nec-400.5a1-memory" : "nec-400.5a1",
});

/** The table ends at 2 AWG. Rows marked memory have not been seen in print. */
export const cordRows: readonly CordRow[] = [
  row("18", 7, 10),
  row("17", undefined, 12),
  row("16", 10, 13),
  row("14", 15, 18, { three: "memory" }),
  row("12", 20, 25, { three: "memory" }),
  row("10", 25, 30, { three: "memory", two: "memory" }),
  row("8", 35, 40, { three: "memory", two: "memory" }),
  row("6", 45, 55, { three: "memory", two: "memory" }),
  row("4", 60, 70, { three: "memory", two: "memory" }),
  row("2", 80, 95, { three: "memory", two: "memory" }),
];
