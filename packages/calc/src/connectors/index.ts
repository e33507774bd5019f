import { missing, tabled, type Value } from "../formula/value.js";
import type { Connector, ConnectorRating, Contacts, Retention, Supplied } from "./connector.js";
import { hasPoles, heldByFriction, OVERHEAD, retentions, wiresOf } from "./connector.js";
import { iecPowerConnectors } from "./iec-power.js";
import { nemaConnectors } from "./nema.js";
import { signalConnectors } from "./signal.js";

export {
  type Connector,
  type ConnectorRating,
  type Contacts,
  hasPoles,
  heldByFriction,
  OVERHEAD,
  type Retention,
  retentions,
  type Supplied,
  wiresOf,
};

/** Every connector family known, by id. */
export const connectors: ReadonlyMap<string, Connector> = new Map(
  [...nemaConnectors, ...iecPowerConnectors, ...signalConnectors].map((each) => [each.id, each]),
);

/** Whether two connectors join; undefined when one of them is not in the table. */
export function mates(one: string, other: string): boolean | undefined {
  const [a, b] = [connectors.get(one), connectors.get(other)];
  return a && b ? a.mates.includes(other) : undefined;
}

/** Whether a plug goes into an outlet: as `mates`, and a 5-15 plug also into a 5-20 receptacle (NEMA WD 6). */
export function plugFits(plug: string, outlet: string): boolean | undefined {
  if (plug === "nema-5-15" && outlet === "nema-5-20") return true;
  return mates(plug, outlet);
}

function rating(id: string, practice: "us" | "iec", what: keyof ConnectorRating): Value {
  const connector = connectors.get(id);
  const kind = what === "amperes" ? "current" : "voltage";
  const value = connector?.rated?.[practice]?.[what];
  if (connector && value !== undefined)
    return tabled(value, kind, connector.source, `${connector.title}, rated ${kind}`);
  const because = connector
    ? `${connector.title} has no rated ${kind} at hand for ${practice} practice; state it on the part.`
    : `There is no connector ${id} in the table.`;
  return missing(kind, { path: "", what: `rated ${kind}`, because });
}

/** Rated current of a connector; missing where the table has none for this practice. */
export const connectorCurrent = (id: string, practice: "us" | "iec"): Value => rating(id, practice, "amperes");

/** Rated voltage of a connector; missing where the table has none for this practice. */
export const connectorVoltage = (id: string, practice: "us" | "iec"): Value => rating(id, practice, "volts");

/** Least voltage of the class a connector is made for; undefined where it takes every mains voltage up to its rating. */
export function connectorLeastVoltage(id: string): Value<"voltage"> | undefined {
  const connector = connectors.get(id);
  return connector?.leastVolts === undefined
    ? undefined
    : tabled(connector.leastVolts, "voltage", connector.source, `least voltage of ${connector.title}`);
}
