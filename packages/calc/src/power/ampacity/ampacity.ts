import { formula } from "../../formula/formula.js";
import { tabled, type Value } from "../../formula/value.js";
import type { SourceId } from "../../sources/index.js";
import { byGauge, none } from "./by-gauge.js";
import { cordRows } from "./cords.js";
import { ambientFactor, countFactor, type TemperatureColumn } from "./factors.js";
import { portableRows } from "./portable.js";

/** Ampacity after the factors for ambient temperature and number of conductors. */
export const ampacity = formula({
  id: "power.ampacity",
  title: "Current a conductor may carry",
  symbol: "Iz",
  kind: "current",
  inputs: {
    It: { kind: "current", is: "tabulated ampacity", above: 0 },
    ka: { kind: "factor", is: "ambient factor", above: 0, most: 1 },
    kn: { kind: "factor", is: "factor for the number of conductors", above: 0, most: 1 },
  },
  expression: "It × ka × kn",
  // The table and both factors carry their own sources, so that an IEC build never cites the NEC.
  source: "arithmetic",
  validity: "copper; a tabulated value at 30 °C ambient",
  example: {
    given: { It: 20, ka: 1, kn: 0.8 },
    gives: 16,
    within: 1e-9,
    from: "12 AWG, 4 conductors: EC&M Code Q&A, 19 Aug 2015 (factor)",
  },
  compute: ({ It, ka, kn }) => It * ka * kn,
});

export interface Service {
  /** Current-carrying conductors; the equipment ground is not counted. */
  readonly conductors: number;
  /** Ambient, °C; 30 unless told. */
  readonly ambient?: number;
  /** Insulation; 60 °C unless marked. */
  readonly column?: TemperatureColumn;
}

/** A tabulated ampacity with the factors of NEC practice; `counted` is the table of the number of conductors. */
export function corrected(
  base: Value,
  { conductors, ambient = 30, column = 60 }: Service,
  counted: SourceId = "nec-400.5a3",
): Value<"current"> {
  const ka = ambientFactor(ambient, column);
  if (ka === undefined) return none(`No ambient factor is at hand for ${ambient} °C; the table used ends at 45 °C.`);
  return ampacity.of({
    It: base,
    ka: tabled(ka, "factor", "nec-310.15b1", `ambient ${ambient} °C, ${column} °C column`),
    kn: tabled(countFactor(conductors), "factor", counted, `${conductors} current-carrying conductors`),
  });
}

/** Ampacity of a flexible cord of the S and SJ families (NEC 400.5(A)(1)). */
export const cordAmpacity = (conductor: Value, service: Service): Value<"current"> =>
  byGauge(
    conductor,
    (awg) => {
      const row = cordRows.find((each) => each.awg === awg);
      const two = service.conductors <= 2;
      const value = two ? row?.two : row?.three;
      if (!row || value === undefined) return undefined;
      const what = `${awg} AWG cord, ${two ? "two" : "three"} current-carrying conductors`;
      // A higher jacket mark does not raise the table itself; it only softens the ambient factor.
      return corrected(tabled(value, "current", two ? row.twoSource : row.threeSource, what), service);
    },
    "NEC Table 400.5(A)(1)",
  );

/** Ampacity of portable power cable, types SC, SCE, SCT, PPE, G and W (NEC 400.5(A)(2)). */
export const portableAmpacity = (conductor: Value, service: Service): Value<"current"> =>
  byGauge(
    conductor,
    (awg) => {
      const column = service.column ?? 60;
      const value = portableRows.find((each) => each.awg === awg)?.[`at${column}`]?.[
        Math.min(service.conductors, 3) - 1
      ];
      if (value === undefined) return undefined;
      return corrected(tabled(value, "current", "nec-400.5a2", `${awg} AWG portable cable, ${column} °C`), service);
    },
    "NEC Table 400.5(A)(2)",
  );

/** Least gauge of a field-assembled extension cord of listed parts on a 20 A circuit: 16 AWG (NEC 240.5(B)(4)). */
export const FIELD_ASSEMBLED_LEAST = { breaker: 20, awg: "16" } as const;
