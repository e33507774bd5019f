import { cssText } from "./css-text.js";
import type { Published } from "./documents.js";
import { scheduleLabels } from "./schedule-labels.js";
import type { Site } from "./site.js";
import { stampOf } from "./stamp.js";

export const sheetStylePath = ({ page }: Pick<Published, "page">): string => page.replace(/\.html$/u, "/sheet.css");

/** What stands at the foot of every printed page of a sheet: a loose or outdated one is to be known for what it is. */
const foot = (document: Published, site: Site): string =>
  `@page { @bottom-left { content: ${cssText(stampOf(document, site))}; font: 8pt sans-serif; } }\n`;

/** The style of one sheet alone: words that are not part of its text. */
export const sheetStyle = (document: Published, site: Site): ReadonlyMap<string, string> =>
  new Map([[sheetStylePath(document), foot(document, site) + scheduleLabels(document)]]);
