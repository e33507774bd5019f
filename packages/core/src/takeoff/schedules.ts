import type { System } from "@plumbmark/calc";
import type { Build } from "../model/build.js";
import { cableColumns } from "./schedules/cables.js";
import { circuitColumns } from "./schedules/circuits.js";
import { hangColumns, hangLines } from "./schedules/hangs.js";
import { panelColumns, panelLines } from "./schedules/panels.js";
import { partColumns, partLines } from "./schedules/parts.js";
import { type Table, tableOf } from "./table.js";

/** Names of the schedules, as `takeoff` and `calc:schedules.` know them, with their titles. */
export const scheduleTitles = {
  parts: "Parts",
  cables: "Cables",
  panels: "Panels",
  circuits: "Circuits",
  hangs: "Hangs",
} as const;

export type ScheduleName = keyof typeof scheduleTitles;

export const scheduleNames = Object.keys(scheduleTitles) as readonly ScheduleName[];

export const isSchedule = (name: string): name is ScheduleName => (scheduleNames as readonly string[]).includes(name);

/** One schedule of a build, in the units its author writes in. */
export function schedule(build: Build, name: ScheduleName, system: System): Table {
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
