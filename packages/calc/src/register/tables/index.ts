import { connectors } from "../../connectors/index.js";
import { units } from "../../quantity/units.js";
import type { Table } from "../table.js";
import { powerTables } from "./power.js";
import { riggingTables } from "./rigging.js";
import { signalTables } from "./signal.js";

/** Every table of figures in this package, by topic. */
export const tables: readonly Table[] = [
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
  ...signalTables,
  ...riggingTables,
];
