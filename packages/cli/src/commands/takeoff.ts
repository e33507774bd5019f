import {
  choices,
  type InspectedDocument,
  isSchedule,
  openRepository,
  pricesOf,
  type ScheduleName,
  type ScheduleTable,
  schedule,
  scheduleNames,
  shortfallTable,
  tableCsv,
  tableMarkdown,
  useNotice,
  withoutEmpty,
} from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { tableText } from "../report/table-text.js";
import { openDocument, openDocuments } from "../repository/open-document.js";
import type { CommandContext } from "../terminal/context.js";
import { Trouble } from "../terminal/trouble.js";

export interface TakeoffOptions {
  readonly as: "text" | "markdown" | "csv";
  readonly standard?: string;
}

/** Lists that are no schedule of the design: what has to be bought or hired, and what all of it costs. */
const LISTS = ["shortfall", "prices"] as const;
type ListName = (typeof LISTS)[number];

const isList = (name: string | undefined): name is ListName => LISTS.includes(name as ListName);

/** Without a name the two that a crew packs by; as CSV, which is one table, the parts. */
function wanted(name: string | undefined, form: TakeoffOptions["as"]): readonly ScheduleName[] {
  if (name === undefined) return form === "csv" ? ["parts"] : ["parts", "cables"];
  if (!isSchedule(name))
    throw new Trouble(`There is no schedule \`${name}\`.`, choices([...scheduleNames, ...LISTS], name));
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

const rendered = (name: ScheduleName, taken: TakenOff, as: TakeoffOptions["as"], context: CommandContext) =>
  printed(schedule(taken.build, name, taken.system, taken.entry), taken, as, context);

const printed = (table: ScheduleTable, taken: TakenOff, as: TakeoffOptions["as"], context: CommandContext): string => {
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

/** Documents, and behind them the name of what is wanted of them. */
function asked(words: readonly string[]): readonly [files: readonly string[], name: string | undefined] {
  const last = words.at(-1);
  if (words.length === 1 || last === undefined) return [words, undefined];
  return isSchedule(last) || isList(last) || words.length === 2 ? [words.slice(0, -1), last] : [words, undefined];
}

/**
 * Prints schedules of one document, what it costs, or what it needs, with others or alone, that is not free on its days.
 * A document with mistakes in it may be counted short: status 1, and so where something is short.
 */
export async function takeoffCommand(
  words: readonly string[],
  options: TakeoffOptions,
  context: CommandContext,
): Promise<number> {
  const [named, name] = asked(words);
  if (name === "shortfall") return printShortfall(named, options, context);
  if (named.length > 1)
    throw new Trouble("Schedules are of one build document.", "Name one; several go with `shortfall` only.");
  const [file] = named as [string];
  if (name === "prices") return printPrices(file, options, context);
  return printSchedules(file, name, options, context);
}

/** What has mistakes in it may be counted short. */
function warned(
  file: string,
  { mistakes }: { readonly mistakes: readonly unknown[] },
  context: CommandContext,
): number {
  if (mistakes.length === 0) return 0;
  const many = mistakes.length === 1 ? "a mistake" : `${mistakes.length} mistakes`;
  context.warn(
    `plumbmark: ${file} has ${many} in it, so what is counted here may not be everything.\nRun \`plumbmark inspect ${file}\` and mend it first.\n`,
  );
  return 1;
}

async function opened(files: readonly string[], { standard }: TakeoffOptions, context: CommandContext) {
  const read = await openDocuments(files, standard, context);
  const repository = openRepository(read.files, rules, { today: context.today, every: true });
  const unasked = repository.standard["rules-from"];
  const taken = read.documents.map((path): TakenOff => ({ ...repository.one(path), unasked }));
  return { repository, documents: read.documents, taken };
}

const channel = ({ as }: TakeoffOptions): "report" | "text" => (as === "text" ? "report" : "text");

async function printShortfall(
  files: readonly string[],
  options: TakeoffOptions,
  context: CommandContext,
): Promise<number> {
  const { repository, documents, taken } = await opened(files, options, context);
  const [first] = taken as [TakenOff];
  const lines = repository.shortfall(documents);
  const worst = taken.find(({ entry }) => useNotice(entry) !== undefined) ?? first;
  const table = shortfallTable(lines, first.system);
  const nothing =
    options.as === "text" ? "Nothing is short: all of it is free on those days.\n" : "Nothing is short.\n";
  const text = lines.length > 0 || options.as === "csv" ? printed(table, worst, options.as, context) : nothing;
  context.print(withNotice(text, worst, options.as), channel(options));
  const mistaken = taken.map(({ build }, index) => warned(documents[index] as string, build, context));
  return lines.length > 0 || mistaken.includes(1) ? 1 : 0;
}

async function printPrices(file: string, options: TakeoffOptions, context: CommandContext): Promise<number> {
  const { taken } = await opened([file], options, context);
  const [first] = taken as [TakenOff];
  const { table, unpriced } = pricesOf(first.build, first.system);
  context.print(withNotice(printed(table, first, options.as, context), first, options.as), channel(options));
  if (unpriced.length > 0)
    context.warn(
      `plumbmark: no price, or no number, is written down for ${unpriced.join(", ")}: they are in no sum.\n`,
    );
  return warned(file, first.build, context);
}

async function printSchedules(
  file: string,
  name: string | undefined,
  options: TakeoffOptions,
  context: CommandContext,
): Promise<number> {
  const names = wanted(name, options.as);
  const { files, document } = await openDocument(file, options.standard, context);
  const repository = openRepository(files, rules, { today: context.today, every: true });
  const taken = { ...repository.one(document), unasked: repository.standard["rules-from"] };
  const tables = names.map((each) => rendered(each, taken, options.as, context)).join("\n");
  context.print(withNotice(tables, taken, options.as), options.as === "text" ? "report" : "text");
  return warned(file, taken.build, context);
}
