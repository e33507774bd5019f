import {
  choices,
  isSchedule,
  type ScheduleName,
  schedule,
  scheduleNames,
  type TakenOff,
  tableCsv,
  tableMarkdown,
  takeoff,
  useNotice,
  withoutEmpty,
} from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { tableText } from "../report/table-text.js";
import type { Surroundings } from "../surroundings.js";
import { Trouble } from "../trouble.js";
import { openDocument } from "./open-document.js";

export interface TakeoffOptions {
  readonly as: "text" | "markdown" | "csv";
  readonly standard?: string;
}

/** Without a name the two that a crew packs by; as CSV, which is one table, the parts. */
function wanted(name: string | undefined, form: TakeoffOptions["as"]): readonly ScheduleName[] {
  if (name === undefined) return form === "csv" ? ["parts"] : ["parts", "cables"];
  if (!isSchedule(name)) throw new Trouble(`There is no schedule \`${name}\`.`, choices(scheduleNames, name));
  return [name];
}

/** How the document was judged, in the words that go with its figures. Rules of plugins are not asked here. */
const verdictOf = ({ entry, unasked }: TakenOff): string =>
  useNotice(entry) ?? (unasked.length > 0 ? "ready by the rules that are built in" : "ready");

const rendered = (name: ScheduleName, taken: TakenOff, as: TakeoffOptions["as"], around: Surroundings) => {
  const table = schedule(taken.build, name, taken.system, taken.entry);
  if (as === "csv") return tableCsv(table, verdictOf(taken));
  return as === "markdown" ? tableMarkdown(withoutEmpty(table)) : tableText(withoutEmpty(table), around);
};

/** What must not be built from says so before and after its figures: a list that is cut in two still tells. */
function withNotice(tables: string, { entry }: TakenOff, as: TakeoffOptions["as"]): string {
  const notice = useNotice(entry);
  if (notice === undefined || as === "csv") return tables;
  const line = as === "markdown" ? `**${notice}**\n` : `${notice}\n`;
  return [line, tables, line].join("\n");
}

/** Prints schedules of one document. A document with mistakes in it may be counted short: status 1. */
export async function takeoffCommand(
  file: string,
  name: string | undefined,
  options: TakeoffOptions,
  around: Surroundings,
): Promise<number> {
  const names = wanted(name, options.as);
  const { files, document } = await openDocument(file, options.standard, around);
  const taken = takeoff(files, document, around.today, rules);
  const tables = names.map((each) => rendered(each, taken, options.as, around)).join("\n");
  around.print(withNotice(tables, taken, options.as));
  if (taken.mistakes.length === 0) return 0;
  const many = taken.mistakes.length === 1 ? "a mistake" : `${taken.mistakes.length} mistakes`;
  around.warn(
    `plumbmark: ${file} has ${many} in it, so what is counted here may not be everything.\nRun \`plumbmark inspect ${file}\` and mend it first.\n`,
  );
  return 1;
}
