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
