import { identityLine } from "../site/identity.js";
import type { PublishedDocument } from "../site/published-document.js";
import type { Site } from "../site/site.js";
import { cssText } from "../style/css-text.js";
import { scheduleLabels } from "./schedule-labels.js";

export const sheetStylePath = ({ page }: Pick<PublishedDocument, "page">): string =>
  page.replace(/\.html$/u, "/sheet.css");

/** What stands at the foot of every printed page of a sheet: a loose or outdated one is to be known for what it is. */
const foot = (document: PublishedDocument, site: Site): string =>
  `@page { @bottom-left { content: ${cssText(identityLine(document, site))}; font: 8pt sans-serif; } }\n`;

/** The style of one sheet alone: words that are not part of its text. */
export const sheetStyle = (document: PublishedDocument, site: Site): ReadonlyMap<string, string> =>
  new Map([[sheetStylePath(document), foot(document, site) + scheduleLabels(document)]]);
