import {
  choices,
  type InspectedDocument,
  isSchedule,
  openRepository,
  type ScheduleName,
  schedule,
  scheduleNames,
  tableCsv,
  tableMarkdown,
  useNotice,
  withoutEmpty,
} from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { tableText } from "../report/table-text.js";
import { openDocument } from "../repository/open-document.js";
import type { CommandContext } from "../terminal/context.js";
import { Trouble } from "../terminal/trouble.js";

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

/** A document opened to be counted; with mistakes in it, what is counted may not be everything. */
interface TakenOff extends InspectedDocument {
  /** Modules whose rules were not asked. */
  readonly unasked: readonly string[];
}

/** How the document was judged, in the words that go with its figures. Rules of plugins are not asked here. */
const verdictOf = ({ entry, unasked }: TakenOff): string =>
  useNotice(entry) ?? (unasked.length > 0 ? "ready by the rules that are built in" : "ready");

const rendered = (name: ScheduleName, taken: TakenOff, as: TakeoffOptions["as"], context: CommandContext) => {
  const table = schedule(taken.build, name, taken.system, taken.entry);
  if (as === "csv") return tableCsv(table, verdictOf(taken));
  return as === "markdown" ? tableMarkdown(withoutEmpty(table)) : tableText(withoutEmpty(table), context);
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
  context: CommandContext,
): Promise<number> {
  const names = wanted(name, options.as);
  const { files, document } = await openDocument(file, options.standard, context);
  const repository = openRepository(files, rules, { today: context.today, every: true });
  const taken = { ...repository.one(document), unasked: repository.standard["rules-from"] };
  const { mistakes } = taken.build;
  const tables = names.map((each) => rendered(each, taken, options.as, context)).join("\n");
  context.print(withNotice(tables, taken, options.as), options.as === "text" ? "report" : "text");
  if (mistakes.length === 0) return 0;
  const many = mistakes.length === 1 ? "a mistake" : `${mistakes.length} mistakes`;
  context.warn(
    `plumbmark: ${file} has ${many} in it, so what is counted here may not be everything.\nRun \`plumbmark inspect ${file}\` and mend it first.\n`,
  );
  return 1;
}
