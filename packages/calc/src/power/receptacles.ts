import type { SourceId } from "../sources/index.js";

interface ReceptacleLoad {
  readonly circuits: readonly number[];
  readonly receptacle: number;
  /** Greatest cord-and-plug load on one receptacle, A. */
  readonly most: number;
  readonly basis: "published" | "memory";
}

/** NEC Table 210.21(B)(2): circuits with two or more receptacles, A. */
export const receptacleLoads: readonly ReceptacleLoad[] = [
  { circuits: [15, 20], receptacle: 15, most: 12, basis: "published" },
  { circuits: [20], receptacle: 20, most: 16, basis: "published" },
  { circuits: [30], receptacle: 30, most: 24, basis: "memory" },
];

interface ReceptacleRating {
  readonly circuit: number;
  /** Receptacle ratings allowed, A. "Not over 15" is written as the one standard rating it leaves. */
  readonly receptacles: readonly number[];
  readonly basis: "published" | "memory";
}

/** NEC Table 210.21(B)(3): receptacle ratings on circuits with two or more receptacles, A. */
export const receptacleRatings: readonly ReceptacleRating[] = [
  { circuit: 15, receptacles: [15], basis: "published" },
  { circuit: 20, receptacles: [15, 20], basis: "published" },
  { circuit: 30, receptacles: [30], basis: "memory" },
  { circuit: 40, receptacles: [40, 50], basis: "published" },
  { circuit: 50, receptacles: [50], basis: "published" },
];

export const receptacleSource: SourceId = "nec-210.21b";

/** Greatest cord-and-plug load on one of several receptacles of a circuit, A; undefined where the table has no row. */
export const receptacleLoad = (circuit: number, receptacle: number): number | undefined =>
  receptacleLoads.find((row) => row.receptacle === receptacle && row.circuits.includes(circuit))?.most;

/**
 * Whether a receptacle of this rating may stand on a circuit of that one, A (NEC 210.21(B)). A single receptacle on
 * its own circuit needs at least the circuit's rating. Undefined where the table has no row. A duplex is two receptacles.
 */
export function receptacleAllowed(circuit: number, receptacle: number, onlyOne: boolean): boolean | undefined {
  if (onlyOne) return receptacle >= circuit;
  return receptacleRatings.find((row) => row.circuit === circuit)?.receptacles.includes(receptacle);
}

/** Greatest load on a circuit shared with lighting or receptacles, as a share of its rating (NEC 210.23). */
export const sharedCircuitShare = (how: "cord-and-plug" | "fastened"): number => (how === "fastened" ? 0.5 : 0.8);
