import { type Gap, type Known, missing, tabled, type Value } from "../../formula/value.js";
import { awgArea, awgName } from "../../quantity/awg.js";
import { toKept, unitByCode } from "../../quantity/units.js";
import { gaugeAt, gaugeRow, gaugeRows } from "./copper-awg.js";
import { metricAt, metricRow, metricRows } from "./copper-metric.js";

/** Cords and jumpers are stranded or flexible; building wire may be solid. */
export type Strands = "stranded" | "solid" | "coated";

const perThousandFeet = unitByCode("resistance-per-length", "Ohm/k[ft_i]");
const perKilometre = unitByCode("resistance-per-length", "Ohm/km");

/** `12` when the cross-section (mm²) is a gauge's own (ASTM B258), undefined for any other. */
export function gaugeOf(mm2: number): string | undefined {
  for (let gauge = -3; gauge <= 40; gauge += 1) if (Math.abs(awgArea(gauge) / mm2 - 1) < 1e-6) return awgName(gauge);
  return undefined;
}

const noRow = (what: string, sizes: string): Gap => ({
  path: "",
  what: "conductor size",
  because: `There is no published resistance for a ${what} conductor here; the sizes are ${sizes}.`,
});

function ofGauge(awg: string, strands: Strands, celsius: number): Known<"resistance-per-length"> | Gap {
  const row = gaugeRow(awg);
  const at75 = row?.[strands];
  if (at75 === undefined)
    return noRow(
      `${strands} ${awg} AWG`,
      gaugeRows
        .filter((each) => each[strands])
        .map((each) => each.awg)
        .join(", "),
    );
  const what = `${awg} AWG copper, ${strands}, at ${celsius} °C`;
  return tabled(toKept(gaugeAt(at75, celsius), perThousandFeet), "resistance-per-length", "nec-ch9-t8", what);
}

function ofMetric(mm2: number, strands: Strands, celsius: number): Known<"resistance-per-length"> | Gap {
  const column = strands === "solid" ? "class1or2" : strands === "coated" ? "class5Tinned" : "class5";
  const row = metricRow(mm2);
  if (!row) return noRow(`${mm2} mm²`, metricRows.map((each) => each.mm2).join(", "));
  const named = { class1or2: "class 1 or 2", class5: "class 5", class5Tinned: "class 5 tinned" }[column];
  const what = `${mm2} mm² copper, ${named}, at ${celsius} °C`;
  return tabled(toKept(metricAt(row[column], celsius), perKilometre), "resistance-per-length", "iec-60228", what);
}

/**
 * Resistance per length of one copper conductor one way, Ω/m. A gauge is read from NEC Chapter 9 Table 8, a metric size
 * from IEC 60228. `celsius` defaults to the temperature conductors are rated by: 75 °C for gauges, 70 °C for metric.
 */
export function conductorResistance(
  conductor: Value,
  strands: Strands = "stranded",
  celsius?: number,
): Value<"resistance-per-length"> {
  if (!conductor.known) return missing("resistance-per-length", ...conductor.gaps);
  const awg = gaugeOf(conductor.value);
  const found = awg ? ofGauge(awg, strands, celsius ?? 75) : ofMetric(conductor.value, strands, celsius ?? 70);
  if ("known" in found) return found;
  return missing("resistance-per-length", {
    ...found,
    path: conductor.origin.from === "written" ? conductor.origin.path : "",
  });
}
