import {
  columnHeading,
  isSchedule,
  type ScheduleCell,
  type ScheduleName,
  type ScheduleTable,
  schedule,
  scheduleNames,
  scheduleTitles,
  tableCsv,
  withoutEmpty,
} from "@plumbmark/core";
import type { Element } from "hast";
import { type Content, h } from "../html/html.js";
import { type TableColumn, table } from "../html/table.js";
import { linkTo } from "../pages/page.js";
import { noticeOf } from "../site/identity.js";
import { onceFor } from "../site/once-for.js";
import type { PublishedDocument } from "../site/published-document.js";
import { lotsOfFaces } from "./lots-of-faces.js";
import { NOTES } from "./schedule-notes.js";

const cell = ({ text, stated }: ScheduleCell): Content => (stated ? text : h("em", text));

/** More columns than these are printed closer, in small type: a sheet of paper is 186 mm wide between its margins. */
const MANY = 10;

/** A schedule as a table of the page; columns that say nothing are left out. */
function tableOf(full: ScheduleTable, caption: string): Element {
  const { columns, rows } = withoutEmpty(full);
  const heads = columns.map(
    (column): TableColumn =>
      column.numeric ? { title: columnHeading(column), align: "right" } : columnHeading(column),
  );
  const said = NOTES[full.name];
  return h("div", { class: ["schedule", "rows", full.name, ...(columns.length > MANY ? ["many"] : [])] }, [
    table(
      caption,
      heads,
      rows.map((row) => row.map(cell)),
    ),
    said === undefined ? undefined : h("p", { class: "said" }, said),
  ]);
}

type Filled = readonly (readonly [ScheduleName, ScheduleTable])[];

/** Schedules of a document that have something in them, filled once for the page and for the files. */
export const filled = onceFor(
  ({ build, system, entry }: PublishedDocument): Filled =>
    build
      ? scheduleNames
          .map((name) => [name, schedule(build, name, system, entry)] as const)
          .filter(([, { rows }]) => rows.length > 0)
      : [],
);

/** Path of a schedule's file, beside the sheet. */
const fileOf = ({ page }: PublishedDocument, name: ScheduleName): string => page.replace(/\.html$/u, `/${name}.csv`);

/** Every schedule of a document as a table, with a link to its file. */
export const schedules = (document: PublishedDocument): Content =>
  filled(document).map(([name, full]) =>
    h("div", { id: `Schedule-${name}` }, [
      tableOf(full, scheduleTitles[name]),
      name === "panels" ? lotsOfFaces(document) : undefined,
      h("p", { class: "download" }, [
        h("a", { href: linkTo(document.page, fileOf(document, name)) }, `${scheduleTitles[name]} as CSV`),
      ]),
    ]),
  );

/** The files those links lead to: CSV by RFC 4180. */
export const scheduleFiles = (document: PublishedDocument): ReadonlyMap<string, string> =>
  new Map(
    filled(document).map(([name, full]) => [fileOf(document, name), tableCsv(full, noticeOf(document) ?? "ready")]),
  );

/** The table an author's link stands for, under the author's words; undefined when there is no such schedule. */
export function scheduleAt(document: PublishedDocument, name: string, words: string): Element | undefined {
  const { build, system, entry } = document;
  if (!build || !isSchedule(name)) return undefined;
  const full = filled(document).find(([each]) => each === name)?.[1] ?? schedule(build, name, system, entry);
  return tableOf(full, words || scheduleTitles[name]);
}
