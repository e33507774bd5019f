import { missing, tabled, type Value } from "../../formula/value.js";
import { ampacity } from "./ampacity.js";
import { none } from "./by-gauge.js";
import { iecRows, type Laid } from "./iec-building.js";
import { iecAmbient, iecGrouping } from "./iec-factors.js";

export interface IecService {
  /** How the wiring is laid; the least of the methods when it is not written. */
  readonly laid?: Laid;
  readonly threePhase?: boolean;
  /** Ambient, °C; 30 unless told. */
  readonly ambient?: number;
  /** Circuits that run together, this one counted; one unless told. */
  readonly together?: number;
}

/** Current-carrying capacity of metric building wiring in IEC practice, A; missing outside the tables. */
export function iecWireAmpacity(conductor: Value, service: IecService): Value<"current"> {
  if (!conductor.known) return missing("current", ...conductor.gaps);
  const { laid = "A2", threePhase = false, ambient = 30, together = 1 } = service;
  const path = conductor.origin.from === "written" ? conductor.origin.path : "";
  const row = iecRows.find((each) => Math.abs(each.mm2 - conductor.value) < 1e-6);
  if (!row) return none("The table of building wiring at hand has copper of 1.5 to 16 mm².", path);
  const [warm, grouped] = [iecAmbient(ambient, "wiring"), iecGrouping(together)];
  if (!warm) return none(`No factor for wiring at ${ambient} °C is at hand; the table used ends at 55 °C.`, path);
  if (grouped === undefined) return none(`No factor for ${together} circuits together is at hand.`, path);
  const what = `${row.mm2} mm², PVC, method ${laid}, ${threePhase ? "three" : "two"} loaded conductors`;
  return ampacity.of({
    It: tabled(row[laid][threePhase ? 1 : 0], "current", "iec-60364-5-52-b", what),
    ka: tabled(warm.factor, "factor", warm.source, `ambient ${ambient} °C, PVC`),
    kn: tabled(grouped, "factor", "iec-60364-5-52-b17", `${together} circuits together`),
  });
}
