import {
  heading,
  isSchedule,
  type ScheduleCell,
  type ScheduleName,
  schedule,
  scheduleNames,
  scheduleTitles,
  type Table,
  tableCsv,
  withoutEmpty,
} from "@plumbmark/core";
import type { Published } from "./documents.js";
import { type Content, type Html, h } from "./html.js";
import { linkTo } from "./page.js";
import { type Column, table } from "./table.js";

const cell = ({ text, stated }: ScheduleCell): Content => (stated ? text : h("em", text));

/** A schedule as a table of the page; columns that say nothing are left out. */
function tableOf(full: Table, caption: string): Html {
  const { columns, rows } = withoutEmpty(full);
  const heads = columns.map(
    (column): Column => (column.numeric ? { title: heading(column), align: "right" } : heading(column)),
  );
  return h("div", { class: "schedule" }, [
    table(
      caption,
      heads,
      rows.map((row) => row.map(cell)),
    ),
  ]);
}

/** Schedules of a document that have something in them. */
const filled = ({ build, system }: Published): readonly (readonly [ScheduleName, Table])[] =>
  build
    ? scheduleNames
        .map((name) => [name, schedule(build, name, system)] as const)
        .filter(([, { rows }]) => rows.length > 0)
    : [];

/** Path of a schedule's file, beside the sheet. */
const fileOf = ({ page }: Published, name: ScheduleName): string => page.replace(/\.html$/u, `/${name}.csv`);

/** Every schedule of a document as a table, with a link to its file. */
export const schedules = (document: Published): Content =>
  filled(document).map(([name, full]) =>
    h("div", { id: `Schedule-${name}` }, [
      tableOf(full, scheduleTitles[name]),
      h("p", { class: "download" }, [
        h("a", { href: linkTo(document.page, fileOf(document, name)) }, `${scheduleTitles[name]} as CSV`),
      ]),
    ]),
  );

/** The files those links lead to: CSV by RFC 4180. */
export const scheduleFiles = (document: Published): ReadonlyMap<string, string> =>
  new Map(filled(document).map(([name, full]) => [fileOf(document, name), tableCsv(full)]));

/** The table an author's link stands for, under the author's words; undefined when there is no such schedule. */
export function scheduleAt({ build, system }: Published, name: string, words: string): Html | undefined {
  return build && isSchedule(name) ? tableOf(schedule(build, name, system), words || scheduleTitles[name]) : undefined;
}
