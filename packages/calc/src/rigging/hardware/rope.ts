import type { SourceId } from "../../sources/index.js";

const LB = 0.45359237;

/** A row of a table of rope or hardware by nominal size in inches. */
export interface SizeRow {
  readonly size: string;
  readonly pounds: number;
}

const rows = (sizes: string, pounds: readonly number[]): readonly SizeRow[] =>
  sizes.split(" ").map((size, index) => ({ size, pounds: pounds[index]! }));

/** WLL, carbon-steel screw-pin anchor shackles; short tons of 2000 lb (some makers mean tonnes: the safe side). */
export const shackles = rows("3/16 1/4 5/16 3/8 7/16 1/2 5/8 3/4 7/8 1", [
  2000 / 3,
  1000,
  1500,
  2000,
  3000,
  4000,
  6500,
  9500,
  13000,
  17000,
]);

const CABLE = "3/32 1/8 5/32 3/16 7/32 1/4 9/32 5/16 11/32 3/8";

/** Least breaking strength of galvanised 7x19 aircraft cable, lb: AC 43.13-1B Table 7-3. */
export const carbonCable = rows(CABLE, [1000, 2000, 2800, 4200, 5600, 7000, 8000, 9800, 12500, 14400]);

/** Stainless 7x19; 11/32 in is not listed. */
export const stainlessCable = rows(
  "3/32 1/8 5/32 3/16 7/32 1/4 9/32 5/16 3/8",
  [920, 1760, 2400, 3700, 5000, 6400, 7800, 9000, 12000],
);

/** Mass (kg) of a row by its size, undefined when the table does not list it: never interpolated. */
export const bySize = (table: readonly SizeRow[], size: string): number | undefined => {
  const found = table.find((row) => row.size === size);
  return found && found.pounds * LB;
};

export interface Termination {
  readonly share: number;
  readonly source: SourceId;
}

/** Share of the rope's breaking strength a termination keeps; of a range the lower end. */
export const terminations = {
  "poured-socket": { share: 1, source: "tm-5-3810-4" },
  "swaged-socket": { share: 0.95, source: "tm-5-3810-4" },
  "spliced-sleeve": { share: 0.95, source: "tm-5-3810-4" },
  "spliced-sleeve-fibre-core": { share: 0.925, source: "tm-5-3810-4" },
  "tucked-splice": { share: 0.86, source: "tm-5-3810-4" },
  "tucked-splice-stainless": { share: 0.76, source: "tm-5-3810-4" },
  "wedge-socket": { share: 0.75, source: "tm-5-3810-4" },
  clips: { share: 0.8, source: "tm-5-3810-4" },
  "oval-sleeve": { share: 0.95, source: "sleeve-newsletter-34" },
} as const satisfies Readonly<Record<string, Termination>>;

export type TerminationName = keyof typeof terminations;
