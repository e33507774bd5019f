import { textOf } from "../data.js";
import type { VenueCircuit } from "../venue/facts.js";

const namesOf = (circuits: readonly VenueCircuit[]): string => circuits.map(({ name }) => name).join(", ");

const outletOf = ({ data }: VenueCircuit): string | undefined => textOf(data, "outlet");

/**
 * Why no feed leads from any circuit to a panel: which ends a cable would have to have, or that nobody wrote them down.
 * @param inlet the connector of the panel; undefined where its part has none
 */
export function noFeedTold(circuits: readonly VenueCircuit[], panel: string, inlet: string | undefined): string {
  const unknown = circuits.filter((each) => outletOf(each) === undefined);
  const outlets = [...new Set(circuits.map(outletOf).filter((outlet) => outlet !== undefined))];
  const unsaid = `What outlet ${namesOf(unknown)} ${unknown.length === 1 ? "has" : "have"} is not written down, so no feed can be chosen.`;
  if (outlets.length === 0) return unsaid;
  const known = namesOf(circuits.filter((each) => outletOf(each) !== undefined));
  const from = `the outlets of ${known} (${outlets.join(", ")})`;
  const to = inlet === undefined ? panel : `${panel} (${inlet})`;
  return `The catalogue has no cable from ${from} to ${to}.${unknown.length === 0 ? "" : ` ${unsaid}`}`;
}

/**
 * Why a face cannot lie on two circuits.
 * @param reached those from which a feed of the catalogue fits an outlet and is long enough
 */
export function noTwoTold(circuits: readonly VenueCircuit[], reached: readonly VenueCircuit[]): string {
  if (circuits.length === 1) return `${namesOf(circuits)} is the only circuit it may be fed from.`;
  const unreached = circuits.filter((each) => !reached.some(({ name }) => name === each.name));
  const also =
    unreached.length === 0 ? "" : ` From ${namesOf(unreached)} no feed of the catalogue fits and reaches the face.`;
  return `No two of the circuits ${namesOf(circuits)} have room for a part of it each.${also}`;
}
