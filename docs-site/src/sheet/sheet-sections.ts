import type { Content } from "../html/html.js";
import { proseOf } from "../prose/document-prose.js";
import type { PublishedDocument } from "../site/published-document.js";
import type { Site } from "../site/site.js";
import { allChecks, openChecks } from "./checks.js";
import { drawingFiles, drawingsSection } from "./drawings-section.js";
import { scheduleFiles, schedules } from "./schedules.js";
import { sheetStyle } from "./sheet-style.js";
import { signOff } from "./sign-off.js";

/** One part of a sheet; it is left out where `content` gives nothing. */
export interface SheetSection {
  /** Id of its heading; it begins with a capital, as those of an author's headings never do. */
  readonly id: string;
  readonly title: string;
  readonly content: (document: PublishedDocument, site: Site) => Content;
}

/** The parts of a sheet after its verdict and cautions, in the order they are read in. */
export const sheetSections: readonly SheetSection[] = [
  { id: "Open", title: "What does not hold", content: openChecks },
  { id: "Drawings", title: "Drawings", content: drawingsSection },
  { id: "Schedules", title: "Schedules", content: schedules },
  { id: "Checks", title: "Every check", content: allChecks },
  { id: "Document", title: "The document", content: proseOf },
  { id: "Sign-off", title: "Boxes to sign", content: signOff },
];

/**
 * Further files of a sheet by path of the site, such as drawings and schedules of their own.
 * Each maker gives what a document has; paths hold the name of the sheet, so that no two documents share one.
 */
export const sheetFiles: readonly ((document: PublishedDocument, site: Site) => ReadonlyMap<string, string>)[] = [
  drawingFiles,
  scheduleFiles,
  sheetStyle,
];
