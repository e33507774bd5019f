import type { SourceId } from "../../sources/index.js";

/** What a cord type is made for. On a stage of us practice only `extra-hard` (NEC 520.68), of iec practice `heavy`. */
export type CordUse = "extra-hard" | "hard" | "light" | "heavy" | "ordinary";

/** Types whose letters begin alike and are made for one use. */
export interface CordUseRow {
  /** First letters of the type, longest first. */
  readonly begins: readonly string[];
  readonly use: CordUse;
  readonly source: SourceId;
}

/**
 * The letters behind these say insulation, oil and weather (SOOW, SJTW, STO) and change nothing about the use. Only
 * what was seen in print may fail a build; the rest is told and left open.
 */
export const CORD_USES: readonly CordUseRow[] = [
  { begins: ["H07RN", "H07BQ", "H07ZZ"], use: "heavy", source: "hd-22.4" },
  { begins: ["H07"], use: "heavy", source: "iec-harmonised-memory" },
  { begins: ["H05", "H03"], use: "ordinary", source: "iec-harmonised-memory" },
  { begins: ["SJ"], use: "hard", source: "nec-400.4" },
  { begins: ["SV", "SP"], use: "light", source: "nec-400.4-memory" },
  { begins: ["SC", "PPE", "G", "W"], use: "extra-hard", source: "nec-400.4-memory" },
  { begins: ["S"], use: "extra-hard", source: "nec-400.4" },
];

/** A type as it stands on a jacket: capital letters, figures, a hyphen or a stroke. */
const TYPE = /^(?:H0[357][A-Z0-9]+(?:-[A-Z0-9]+)?|S(?:J|V|P|C)?(?:E|T|H)?O{0,2}W?(?:-[123])?|SC[ET]?|PPE|G|G-GC|W)$/u;

/** What a cord of this type is made for, and who says so; undefined for a type that is in no table at hand. */
export function cordUse(type: string): CordUseRow | undefined {
  const letters = type.trim().toUpperCase();
  if (!TYPE.test(letters)) return undefined;
  return CORD_USES.find(({ begins }) => begins.some((each) => letters.startsWith(each)));
}
