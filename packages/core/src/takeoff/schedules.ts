import type { System } from "@plumbmark/calc";
import type { Build } from "../model/build.js";
import { type ScheduleName, scheduleTitles } from "./names.js";
import { cableColumns } from "./schedules/cables.js";
import { circuitColumns } from "./schedules/circuits.js";
import { hangColumns, hangLines } from "./schedules/hangs.js";
import { panelColumns, panelLines } from "./schedules/panels.js";
import { partColumns, partLines } from "./schedules/parts.js";
import { type ScheduleTable, tableOf } from "./table.js";

/** One schedule of a build, in the units its author writes in. */
export function schedule(build: Build, name: ScheduleName, system: System): ScheduleTable {
  const about = { name, title: scheduleTitles[name] };
  switch (name) {
    case "parts":
      return tableOf(about, partColumns, partLines(build.takeoff.pieces), system);
    case "cables":
      return tableOf(about, cableColumns, build.takeoff.cables, system);
    case "panels":
      return tableOf(about, panelColumns, panelLines(build), system);
    case "circuits":
      return tableOf(about, circuitColumns, build.circuits, system);
    case "hangs":
      return tableOf(about, hangColumns, hangLines(build), system);
  }
}
