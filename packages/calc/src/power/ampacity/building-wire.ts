import { leastOf } from "../../formula/arithmetic.js";
import { tabled, type Value } from "../../formula/value.js";
import { corrected } from "./ampacity.js";
import { buildingRow } from "./building.js";
import { byGauge } from "./by-gauge.js";
import type { TemperatureColumn } from "./factors.js";

/** Where building wire runs. */
export interface WireService {
  /** Current-carrying conductors that run together; at most three unless told. */
  readonly conductors?: number;
  /** Ambient, °C; 30 unless told. */
  readonly ambient?: number;
}

/** Ampacity of copper building wire (NEC Table 310.16), with the factors for ambient and conductors that run together. */
export const buildingAmpacity = (
  conductor: Value,
  column: TemperatureColumn = 60,
  service: WireService = {},
): Value<"current"> =>
  byGauge(
    conductor,
    (awg) => {
      const row = buildingRow(awg);
      const base = row && tabled(row[`at${column}`], "current", "nec-310.16", `${awg} AWG copper, ${column} °C`);
      const { conductors = 3, ambient = 30 } = service;
      const plain = conductors <= 3 && ambient <= 30;
      return base && (plain ? base : corrected(base, { conductors, ambient, column }, "nec-310.15c1"));
    },
    "NEC Table 310.16",
  );

/** Greatest breaker on small building wire (NEC 240.4(D)); missing for sizes it does not cap. */
export const smallConductorBreaker = (conductor: Value): Value<"current"> =>
  byGauge(
    conductor,
    (awg) => {
      const most = buildingRow(awg)?.mostBreaker;
      return most === undefined ? undefined : tabled(most, "current", "nec-240.4d", `greatest breaker on ${awg} AWG`);
    },
    "NEC 240.4(D)",
  );

/** What building wire and its ends are marked with. */
export interface WireMarks extends WireService {
  /** Column of its insulation; 60 °C unless told, the least there is. */
  readonly insulation?: TemperatureColumn;
  /** Column of the lowest rated termination; 60 °C unless marked (NEC 110.14(C), up to 100 A or 1 AWG). */
  readonly terminals?: TemperatureColumn;
}

/**
 * Current building wire may carry between its terminals: the ampacity of its insulation's column with the factors for
 * ambient and number of conductors, and no more than the column of its terminals gives without any (NEC 110.14(C)).
 * Factors belong to the insulation, which is what the heat would harm; the cap to the terminal, which stands in the air
 * of its own box. Taking both from the 60 °C column counts the heat twice.
 */
export function wireAmpacity(conductor: Value, marks: WireMarks = {}): Value<"current"> {
  const { insulation = 60, terminals = 60, ...service } = marks;
  const derated = buildingAmpacity(conductor, insulation, service);
  if (!derated.known) return derated;
  const row = byGauge(
    conductor,
    (awg) => {
      const cap = buildingRow(awg)?.[`at${terminals}`];
      return cap === undefined
        ? undefined
        : tabled(cap, "current", "nec-110.14c", `${awg} AWG copper at terminals of ${terminals} °C`);
    },
    "NEC Table 310.16",
  );
  // Never above its own insulation either: a terminal of 75 °C does not raise a wire of 60 °C.
  return insulation <= terminals ? derated : leastOf([derated, row], "current", "Iz");
}

/** The column a temperature rating is read in: the highest that is not above it; undefined below 60 °C. */
export const columnOf = (celsius: number): TemperatureColumn | undefined =>
  ([90, 75, 60] as const).find((column) => celsius >= column - 1e-9);
