import { connectors, OVERHEAD, retentions } from "../../connectors/index.js";
import { units } from "../../quantity/units.js";
import { CABLE_ALLOWANCE } from "../../venue/way.js";
import type { RegisterTable } from "../table.js";
import { powerTables } from "./power.js";
import { riggingTables } from "./rigging.js";
import { signalTables } from "./signal.js";

/** Every table of figures in this package, by topic. */
export const tables: readonly RegisterTable[] = [
  {
    id: "quantity.units",
    title: "Units",
    holds: "factor to the unit a kind is kept in",
    sources: ["ucum-2.2"],
    data: units,
  },
  ...powerTables,
  {
    id: "connectors.families",
    title: "Connector families",
    holds: "rating in A and V by practice, poles, retention, what each mates with",
    sources: [],
    data: connectors,
  },
  {
    id: "connectors.retentions",
    title: "Classes of retention, from the weakest to the strongest hold",
    holds:
      "name of the class; of a joint the weaker side counts. None and friction let go by a pull alone: friction alone. A sleeve that a part states counts as a latch",
    sources: ["practice"],
    data: retentions,
  },
  {
    id: "connectors.overhead",
    title: "Height from which a wall or standing face is overhead",
    holds: "m, lower edge above the floor; a flown face is overhead at any height",
    sources: ["practice"],
    data: OVERHEAD,
  },
  ...signalTables,
  {
    id: "venue.cable-allowance",
    title: "What a cable needs over its way",
    holds: "share of the way for bends and ties, and m for both ends; a house sets its own",
    sources: ["house"],
    data: CABLE_ALLOWANCE,
  },
  ...riggingTables,
];
