import type { System } from "@plumbmark/calc";
import { failuresAt, type JudgedDocument } from "../inspection/use-notice.js";
import type { Build } from "../model/build.js";
import { type ScheduleName, scheduleTitles } from "./names.js";
import { cableColumns } from "./schedules/cables.js";
import { circuitColumns } from "./schedules/circuits.js";
import { cutColumns, cutLines } from "./schedules/cut.js";
import { hangColumns, hangLines } from "./schedules/hangs.js";
import { panelColumns, panelLines } from "./schedules/panels.js";
import { partColumns, partLines } from "./schedules/parts.js";
import { type ColumnOf, type ScheduleTable, tableOf } from "./table.js";

/** The last column of a schedule: which rules do not hold for what the row is about. */
const notHolding = <Row extends { readonly path: string }>(
  judged: JudgedDocument | undefined,
): readonly ColumnOf<Row>[] => {
  if (!judged) return [];
  const failures = failuresAt(judged);
  return [{ name: "Does not hold", of: ({ path }) => failures(path).join(", ") }];
};

/**
 * One schedule of a build, in the units its author writes in.
 * @param judged what the inspection says of the document; with it, rows say which rules do not hold for them
 */
export function schedule(build: Build, name: ScheduleName, system: System, judged?: JudgedDocument): ScheduleTable {
  const about = { name, title: scheduleTitles[name] };
  switch (name) {
    case "parts":
      return tableOf(about, partColumns, partLines(build.takeoff.pieces), system);
    case "cables":
      return tableOf(about, cableColumns, build.takeoff.cables, system);
    case "panels":
      return tableOf(about, panelColumns, panelLines(build), system);
    case "cut":
      return tableOf(about, cutColumns, cutLines(build), system);
    case "circuits":
      return tableOf(about, [...circuitColumns, ...notHolding(judged)], build.circuits, system);
    case "hangs":
      return tableOf(about, [...hangColumns, ...notHolding(judged)], hangLines(build), system);
  }
}
