/** Names of the schedules, as `takeoff` and `calc:schedules.` know them, with their titles. */
export const scheduleTitles = {
  parts: "Parts",
  cables: "Cables",
  panels: "Panels",
  cut: "Cut of the picture",
  circuits: "Circuits",
  hangs: "Hangs",
} as const;

export type ScheduleName = keyof typeof scheduleTitles;

export const scheduleNames = Object.keys(scheduleTitles) as readonly ScheduleName[];

export const isSchedule = (name: string): name is ScheduleName => (scheduleNames as readonly string[]).includes(name);

/** `schedules.cables` → `cables`, whether there is such a schedule or not; undefined for any other path. */
export const scheduleNamed = (path: string): string | undefined =>
  path.startsWith("schedules.") ? path.slice("schedules.".length) : undefined;
