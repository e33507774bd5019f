import { identityLine, noticeOf } from "../site/identity.js";
import type { PublishedDocument } from "../site/published-document.js";
import type { Site } from "../site/site.js";
import { cssText } from "../style/css-text.js";
import { scheduleLabels } from "./schedule-labels.js";

export const sheetStylePath = ({ page }: Pick<PublishedDocument, "page">): string =>
  page.replace(/\.html$/u, "/sheet.css");

/**
 * What stands at the foot of every printed page of a sheet: a loose or outdated one is to be known for what it is, and
 * one that must not be built from says so first, in heavy type.
 */
function foot(document: PublishedDocument, site: Site): string {
  const notice = noticeOf(document);
  const line = cssText(identityLine(document, site));
  const [content, font] =
    notice === undefined ? [line, "8pt sans-serif"] : [`${cssText(notice)} "\\a" ${line}`, "bold 8pt sans-serif"];
  return `@page { @bottom-left { content: ${content}; font: ${font}; white-space: pre-line; width: 82%; } }\n`;
}

/** The style of one sheet alone: words that are not part of its text. */
export const sheetStyle = (document: PublishedDocument, site: Site): ReadonlyMap<string, string> =>
  new Map([[sheetStylePath(document), foot(document, site) + scheduleLabels(document)]]);
