import { columnHeading, withoutEmpty } from "@plumbmark/core";
import type { PublishedDocument } from "../site/published-document.js";
import { rowLabels } from "../style/row-labels.js";
import { filled } from "./schedules.js";

/** Which columns a schedule has and in what units is another matter for each document. */
export const scheduleLabels = (document: PublishedDocument): string =>
  rowLabels(filled(document).map(([, full]) => [full.name, withoutEmpty(full).columns.map(columnHeading)] as const));
