import {
  columnOf,
  gaugeOf,
  iecWireAmpacity,
  LAID,
  leastOf,
  type Missing,
  missing,
  RING,
  smallConductorBreaker,
  type TemperatureColumn,
  tabled,
  type Value,
  wireAmpacity,
} from "@plumbmark/calc";
import type { Circuit } from "./circuit.js";
import { ambientOf } from "./cord.js";

/** The column a mark of the wiring is read in, 60 °C where none is written; a gap where it cannot be read. */
function markAt({ build, path, label }: Circuit, key: string, what: string): TemperatureColumn | Missing {
  const at = `${path}.wiring.${key}`;
  const mark = build.reader.optional(at, "temperature", what, label);
  if (!mark) return 60;
  if (!mark.known) return mark;
  const column = columnOf(mark.value);
  const because = `${label}: no table at hand has a ${what} of ${mark.value} °C; the least is 60 °C.`;
  return column ?? missing("temperature", { path: at, what, because });
}

/** A ring feeds every socket from two sides: behind 32 A its cable has to carry 20 A (BS 7671 433.1.204). */
function ringBreaker({ conductor }: Circuit, carries: Value<"current">): Value<"current"> {
  if (!carries.known || !conductor.known) return carries;
  return conductor.value >= RING.conductor - 1e-6 && carries.value >= RING.capacity
    ? tabled(RING.breaker, "current", "bs-7671-433.1.204", "greatest breaker on a ring of BS 1363 sockets")
    : carries;
}

/**
 * Largest breaker on the building wiring, A. By gauge its ampacity in the column of its insulation with the factors,
 * capped by its terminals (NEC 310.16, 110.14(C)), with the cap of the small sizes; a metric size by IEC 60364-5-52 and
 * how it is laid, on a ring by what its sockets may be on.
 */
export function wiringBreaker(circuit: Circuit): Value<"current"> {
  const { conductor, build, path } = circuit;
  const { reader } = build;
  const around =
    reader.optional(`${path}.wiring.ambient`, "temperature", "temperature around the wiring", circuit.label) ??
    ambientOf(build);
  if (around && !around.known) return missing("current", ...around.gaps);
  const beside = `${path}.wiring.together`;
  const together = !reader.has(beside) ? 1 : reader.count(beside, 1000);
  if (together === 0)
    return missing("current", { path: beside, what: "number of circuits laid together", of: circuit.label });
  const warm = around ? { ambient: around.value } : {};
  if (conductor.known && gaugeOf(conductor.value) === undefined) {
    const method = reader.data(`${path}.wiring.method`);
    const laid = LAID.find((each) => each === method);
    if (method !== undefined && laid === undefined)
      return missing("current", { path: `${path}.wiring.method`, what: "way of laying the wiring" });
    const { threePhase } = circuit;
    const carries = iecWireAmpacity(conductor, { ...warm, together, threePhase, ...(laid ? { laid } : {}) });
    return circuit.layout === "ring" ? ringBreaker(circuit, carries) : carries;
  }
  const [insulation, terminals] = [
    markAt(circuit, "insulation", "temperature rating of the insulation"),
    markAt(circuit, "terminals", "temperature rating of the terminals"),
  ];
  if (typeof insulation !== "number") return missing("current", ...insulation.gaps);
  if (typeof terminals !== "number") return missing("current", ...terminals.gaps);
  const [each, cap] = [circuit.threePhase ? 3 : 2, smallConductorBreaker(conductor)];
  const ampacity = wireAmpacity(conductor, { insulation, terminals, ...warm, conductors: each * together });
  return cap.known ? leastOf([ampacity, cap], "current", "greatest breaker") : ampacity;
}
