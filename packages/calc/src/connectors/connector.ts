import type { SourceId } from "../sources/index.js";

/** How a mated pair is held together. */
export type Retention = "none" | "friction" | "latch" | "twist" | "screw" | "bayonet";

/** From the weakest to the strongest hold; the first two let go by a pull alone. */
export const retentions: readonly Retention[] = ["none", "friction", "latch", "twist", "screw", "bayonet"];

/** Height of its lower edge above the floor from which a wall or standing face is overhead, metres: people pass under it. */
export const OVERHEAD = 2;

/** Rated current (A) and voltage (V) in one practice. */
export interface ConnectorRating {
  readonly amperes: number;
  readonly volts: number;
}

/**
 * A connector family as both sides of a joint name it. Where plug and inlet share one id it mates with itself.
 */
export interface Connector {
  readonly id: string;
  readonly title: string;
  readonly standard: string;
  readonly carries: "power" | "signal";
  /** Power only. A practice without an entry has no rating at hand: missing, not zero. */
  readonly rated?: { readonly us?: ConnectorRating; readonly iec?: ConnectorRating };
  /** Poles and wires: `2P+PE`. */
  readonly poles?: string;
  readonly retention: Retention;
  readonly mates: readonly string[];
  /** Whether it may be opened under load, where known. The maker's data sheet decides. */
  readonly underLoad?: boolean;
  readonly source: SourceId;
  /** Where the retention comes from, if not from `source`. */
  readonly retentionSource?: SourceId;
  /** A caution or a limit of what is known. */
  readonly note?: string;
}

/** Whether a retention lets go by a pull alone. */
export const heldByFriction = (retention: Retention): boolean => retention === "none" || retention === "friction";
