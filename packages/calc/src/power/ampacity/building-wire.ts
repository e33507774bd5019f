import { tabled, type Value } from "../../formula/value.js";
import { buildingRow } from "./building.js";
import { byGauge } from "./by-gauge.js";
import type { Column } from "./factors.js";

/** Ampacity of copper building wire (NEC Table 310.16), at most three current-carrying conductors. */
export const buildingAmpacity = (conductor: Value, column: Column = 60): Value =>
  byGauge(
    conductor,
    (awg) => {
      const row = buildingRow(awg);
      return row && tabled(row[`at${column}`], "current", "nec-310.16", `${awg} AWG copper, ${column} °C`);
    },
    "NEC Table 310.16",
  );

/** Greatest breaker on small building wire (NEC 240.4(D)); missing for sizes it does not cap. */
export const smallConductorBreaker = (conductor: Value): Value =>
  byGauge(
    conductor,
    (awg) => {
      const most = buildingRow(awg)?.mostBreaker;
      return most === undefined ? undefined : tabled(most, "current", "nec-240.4d", `greatest breaker on ${awg} AWG`);
    },
    "NEC 240.4(D)",
  );
