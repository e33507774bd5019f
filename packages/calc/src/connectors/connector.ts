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

/** Contacts of a power connector. */
export interface Contacts {
  /** Line contacts; one of two where its second may be neutral or another line. */
  readonly lines: 1 | 2 | 3;
  /** `either`: the second contact takes a neutral or another line. */
  readonly neutral: "yes" | "no" | "either";
  readonly earth: boolean;
}

/** How a circuit is supplied: one line and neutral, two lines, or three. */
export type Supplied = "line-to-neutral" | "line-to-line" | "three-phase";

/**
 * A connector family as both sides of a joint name it. Where plug and inlet share one id it mates with itself.
 */
export interface Connector {
  readonly id: string;
  readonly title: string;
  readonly standard: string;
  readonly carries: "power" | "signal";
  /** Power only: its contacts, and the least voltage of its class, V; none for a coupler that takes every mains voltage. */
  readonly contacts?: Contacts;
  readonly leastVolts?: number;
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

/** Current-carrying and earth contacts of a connector: as many wires as its cord has to have. */
export const wiresOf = ({ lines, neutral, earth }: Contacts): number =>
  lines + (neutral === "no" ? 0 : 1) + (earth ? 1 : 0);

/**
 * Whether an outlet has the poles of its supply. A plug for one line and neutral on two lines puts a line where the
 * equipment expects neutral, and one for two lines has no neutral to give.
 */
export function hasPoles({ lines, neutral }: Contacts, supplied: Supplied, neutralNeeded: boolean): boolean {
  if (supplied === "three-phase") return lines === 3 && (!neutralNeeded || neutral === "yes");
  if (neutral === "either") return lines === 1;
  return supplied === "line-to-neutral" ? lines === 1 && neutral === "yes" : lines === 2;
}
