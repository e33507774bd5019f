import { circuitLoad, counted, loadCurrent, missing, sum, type Value } from "@plumbmark/calc";
import type { Design } from "../design.js";
import type { Circuit } from "../power/circuit.js";
import { otherCurrents } from "../power/legs.js";
import { otherLoadOf } from "../power/other-load.js";
import type { Supply } from "../power/supply.js";
import type { OwnUse } from "./use.js";

/** Current of its runs and devices; what the house has on it is told apart, for every build writes that down anew. */
function amountsOf(circuit: Circuit): Pick<OwnUse, "amounts" | "beside"> {
  const { voltage, runs, devices } = circuit;
  if (!circuit.threePhase) {
    const own = circuitLoad.of({ s: [...runs.flatMap((run) => run.loads), ...devices.map(({ load }) => load)] });
    const other = otherLoadOf(circuit);
    return {
      amounts: { I: loadCurrent.of({ S: own, V: voltage }) },
      ...(other ? { beside: loadCurrent.of({ S: other, V: voltage }) } : {}),
    };
  }
  const { legs, beside } = otherCurrents(circuit);
  return { amounts: legs, ...(beside ? { beside } : {}) };
}

const nothingOn = ({ runs, devices }: Circuit): boolean => runs.length + devices.length === 0;

/** Circuits with something of the build on them. */
export const circuitUses = ({ circuits }: Design, venue: string): readonly OwnUse[] =>
  circuits
    .filter((circuit) => !nothingOn(circuit))
    .map((circuit) => ({
      ...{ of: "circuit" as const, name: circuit.name, venue, path: circuit.path, label: circuit.label, unit: "A" },
      ...amountsOf(circuit),
      allowed: circuit.continuousRating(),
    }));

/** Outlets of its circuits: one for each run, and one for the devices a circuit serves. */
export const outletUses = ({ circuits }: Design, venue: string): readonly OwnUse[] =>
  circuits
    .filter((circuit) => !nothingOn(circuit))
    .map(({ name, path, label, runs, devices, outletCount }) => ({
      ...{ of: "outlets" as const, name, venue, path, label: `Outlets of ${name}`, unit: "{count}" },
      amounts: { n: counted(runs.length + (devices.length > 0 ? 1 : 0), `outlets of ${name} taken`) },
      allowed:
        outletCount === undefined
          ? missing("count", { path: `${path}.outlets`, what: "number of outlets", of: label })
          : counted(outletCount, `outlets of ${name}`),
    }));

/** The legs of a supply; where a circuit does not say which it is on, all of it may be on any: one sum for each leg. */
function legAmounts(supply: Supply): Readonly<Record<string, Value>> {
  const legs = Object.entries(supply.legs);
  if (legs.every(([, value]) => value.known)) return supply.legs;
  const all = sum(
    supply.circuits.map(({ current }) => current),
    "current",
    "I",
  );
  return Object.fromEntries(legs.map(([leg]) => [leg, all]));
}

/** Supplies its circuits are taken from. */
export const supplyUses = ({ supplies }: Design, venue: string): readonly OwnUse[] =>
  supplies
    .filter(({ circuits }) => circuits.some((circuit) => !nothingOn(circuit)))
    .map((supply) => ({
      ...{ of: "supply" as const, name: supply.name, venue, path: supply.path, label: supply.label, unit: "A" },
      amounts: legAmounts(supply),
      allowed: supply.most,
    }));
