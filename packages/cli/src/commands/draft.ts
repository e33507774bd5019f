import { existsSync, statSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { readQuantity } from "@plumbmark/calc";
import { type Mistake, openRepository, readSurveys, type Survey } from "@plumbmark/core";
import {
  type Brief,
  briefFor,
  changedFrom,
  type Drafted,
  type DraftRecord,
  draft,
  draftRecord,
  drawnTogether,
  freePath,
  frontMatterText,
  namesKept,
  readWish,
  underNames,
  unknownIn,
  type Wish,
  wishLike,
} from "@plumbmark/draft";
import { removeLeftovers, writeInPlace } from "@plumbmark/in-place";
import { rules } from "@plumbmark/rules";
import { changesText } from "../report/draft/changes-text.js";
import { draftMarkdown } from "../report/draft/options-markdown.js";
import { draftText } from "../report/draft/options-text.js";
import { togetherMarkdown, togetherText } from "../report/draft/together.js";
import { json } from "../report/form.js";
import { type DocsRepository, readRepository } from "../repository/read-repository.js";
import { disk } from "../source/disk.js";
import { fromRoot, isOutside } from "../source/paths.js";
import type { CommandContext } from "../terminal/context.js";
import { systemFault } from "../terminal/system-fault.js";
import { Trouble } from "../terminal/trouble.js";

export interface DraftOptions {
  readonly as: "text" | "json" | "markdown";
  readonly option?: string;
  readonly to?: string;
  readonly replace?: boolean;
  readonly every?: boolean;
  readonly pairs?: boolean;
  readonly together?: boolean;
  readonly sheet?: string;
  /** A build that stands, to be laid out in another size. */
  readonly like?: string;
  readonly width?: string;
  readonly height?: string;
  /** The face that is meant, of a build that has several. */
  readonly face?: string;
  readonly within?: string;
  readonly standard?: string;
}

/** Work of less than this says nothing of how far it is. */
const QUIET_MS = 1000;

const told = (file: string, { place, says, mend }: Mistake): string =>
  `${file}:${place.line}:${place.column}: ${says} ${mend}`;

async function textOf(path: string, written: string): Promise<string> {
  try {
    return await readFile(path, "utf8");
  } catch (error) {
    const { says, mend } = systemFault(error) ?? { says: String(error), mend: "Name the file of a wish." };
    throw new Trouble(`${written} cannot be read. ${says}`, mend);
  }
}

/** Reads a wish. @throws Trouble that tells every mistake with its place */
async function wishIn(
  written: string,
  root: string,
  folder: string,
  surveys: ReadonlyMap<string, Survey>,
): Promise<Wish> {
  const path = resolve(folder, written);
  const text = await textOf(path, written);
  const { wish, mistakes } = readWish({ path: fromRoot(root, path), text }, surveys);
  if (mistakes.length > 0)
    throw new Trouble(mistakes.map((each) => told(written, each)).join("\n"), "Mend the wish, and draft again.");
  if (!wish) throw new Trouble(`${written} is no wish.`, "A wish is a file of YAML with the keys `wish` and `title`.");
  return wish;
}

/** How long the search may take, in milliseconds. @throws Trouble */
function limitOf(within: string | undefined): number | undefined {
  if (within === undefined) return undefined;
  const read = readQuantity(within, ["time"]);
  if (read.ok && read.quantity.value > 0) return read.quantity.value * 1000;
  throw new Trouble(`\`--within ${within}\` is no time.`, "Write a time such as `5 s`.");
}

/** Number of the option that is to be written. @throws Trouble */
function numberOf({ option, to }: DraftOptions): number | undefined {
  if (option === undefined && to === undefined) return undefined;
  if (option === undefined) throw new Trouble("Which option is to be written is not said.", "Add `--option 1`.");
  if (to === undefined)
    throw new Trouble("Where the option is to be written is not said.", "Add `--to builds/NAME.md`.");
  const number = Number(option);
  if (Number.isInteger(number) && number >= 1) return number;
  throw new Trouble(
    `\`--option ${option}\` is the number of no option.`,
    "Write its number in the table: `--option 1`.",
  );
}

interface Target {
  /** On the disk. */
  readonly path: string;
  /** From the root of the docs repository. */
  readonly file: string;
}

/** Where the document goes. @throws Trouble when something is there that is not to be replaced */
function targetOf({ to, replace }: DraftOptions, root: string, folder: string): Target | undefined {
  if (to === undefined) return undefined;
  const path = resolve(folder, to);
  const file = fromRoot(root, path);
  if (isOutside(file))
    throw new Trouble(`\`${to}\` is outside the docs repository ${root}.`, "Name a place inside it.");
  if (!/\.md$/iu.test(file)) throw new Trouble(`\`${to}\` is no Markdown file.`, "Let its name end in `.md`.");
  if (existsSync(path)) {
    if (!statSync(path).isFile()) throw new Trouble(`\`${to}\` is no file.`, "Name another place.");
    if (!replace) throw new Trouble(`\`${to}\` is there already.`, "Name another place, or add `--replace`.");
  }
  return { path, file };
}

async function write({ path }: Target, text: string, replace: boolean): Promise<void> {
  try {
    await removeLeftovers(path);
    writeInPlace(path, text, { flush: true, onlyNew: !replace });
  } catch (error) {
    const { says, mend } = systemFault(error) ?? { says: String(error), mend: "Look at the disk." };
    throw new Trouble(`The document cannot be written. ${says}`, mend);
  }
}

interface Made {
  readonly brief: Brief;
  readonly wish: Wish;
  readonly record: DraftRecord;
  readonly drafted: Drafted;
}

/** What several wishes are drafted in, and how long all of it may take. */
interface Drafting {
  readonly repository: DocsRepository;
  readonly options: DraftOptions;
  readonly context: CommandContext;
  readonly begun: number;
}

const open = ({ files }: DocsRepository, { today }: CommandContext) =>
  openRepository(files, rules, { today, every: true, keep: "models" });

function made(wish: Wish, path: string, { repository, options, context, begun }: Drafting): Made {
  const opened = open(repository, context);
  const [mistake] = unknownIn(wish, opened);
  if (mistake) throw new Trouble(`${wish.file}: \`${mistake.path}\`: ${mistake.says}`, mistake.mend);
  const limit = limitOf(options.within);
  const isOver = (): boolean => limit !== undefined && performance.now() - begun > limit;
  const brief = briefFor(wish, { repository: opened, path, isOver });
  const progress = (words: string): void => {
    if (performance.now() - begun > QUIET_MS) context.progress?.(`${wish.name}: ${words}`);
  };
  const { every = false, pairs = false } = options;
  const drafted = draft(brief, { name: basename(path, ".md"), every, pairs, progress });
  context.progress?.("");
  return { brief, wish, drafted, record: draftRecord(brief, drafted) };
}

const hasNoShortfall = ({ drafted }: Made): boolean => drafted.options.some(({ shortfall }) => shortfall.length === 0);

/** Wishes that are named, or all there are. @throws Trouble when there are none */
async function pathsOf(written: readonly string[], { root, settings }: DocsRepository): Promise<readonly string[]> {
  if (written.length > 0) return written;
  const found = await disk.treeAt(root).find(settings.wishes);
  if (found.length === 0)
    throw new Trouble("The docs repository has no wish.", "Begin one with `plumbmark start wish NAME`.");
  return found.map((path) => join(root, path));
}

const print = (records: readonly DraftRecord[], as: DraftOptions["as"], context: CommandContext): void => {
  if (as === "json") context.print(json(records.length === 1 ? records[0] : records), "json");
  else if (as === "markdown") context.print(records.map(draftMarkdown).join("\n"));
  else context.print(records.map((record) => draftText(record, context)).join("\n"), "report");
};

/**
 * Drafts builds from wishes and prints the options, or writes one of them. Gives the exit status: 0 of each wish at least
 * one option needs nothing that is not there, 1 of one none does. @throws Trouble when it cannot be carried out
 */
export async function draftCommand(
  written: readonly string[],
  options: DraftOptions,
  context: CommandContext,
): Promise<number> {
  const number = numberOf(options);
  void limitOf(options.within);
  refuseWithoutLike(options);
  const [first] = written;
  const from = options.like ?? first;
  const folder = from === undefined ? context.folder : dirname(resolve(context.folder, from));
  const { standard } = options;
  const repository = await readRepository({ folder, paths: [], standard, today: context.today });
  const { root, files } = repository;
  const surveys = surveysIn(files);
  if (options.like !== undefined)
    return draftLike(options.like, written, number, draftingIn(repository, options, context));
  const paths = await pathsOf(written, repository);
  if (number !== undefined && paths.length > 1)
    throw new Trouble("Several wishes are named, and the option of one is to be written.", "Name one wish.");
  const wishes = await Promise.all(paths.map((path) => wishIn(path, root, context.folder, surveys)));
  refuseTwins(wishes);
  const target = targetOf(options, root, context.folder);
  const taken = new Set(files.documents.map(({ path }) => path));
  const drafting = draftingIn(repository, options, context);
  const own = (wish: Wish): Wish => (options.together ? { ...wish, outOf: "catalogue" } : wish);
  const all = wishes.map((wish) => made(own(wish), target?.file ?? freePath(taken, wish.name), drafting));
  if (options.together) return printTogether(all, drafting);
  if (target && number !== undefined)
    return writeOption(all[0] as Made, number, target, options.replace ?? false, context);
  if (options.sheet !== undefined) return writeSheet(all, options.sheet, drafting);
  print(
    all.map(({ record }) => record),
    options.as,
    context,
  );
  return all.every(hasNoShortfall) ? 0 : 1;
}

const draftingIn = (repository: DocsRepository, options: DraftOptions, context: CommandContext): Drafting => ({
  repository,
  options,
  context,
  begun: performance.now(),
});

/** What is asked of a build that stands is asked of nothing else. @throws Trouble */
function refuseWithoutLike({ like, width, height, face }: DraftOptions): void {
  if (like !== undefined) return;
  const [without] = Object.entries({ width, height, face }).find(([, value]) => value !== undefined) ?? [];
  if (without === undefined) return;
  throw new Trouble(
    `\`--${without}\` is asked of a build that stands, and none is named.`,
    without === "face" ? "Add `--like BUILD`." : "Add `--like BUILD`, or write `size` in the wish.",
  );
}

/** Drafts a build that stands in another size, and tells what is another then. @throws Trouble */
async function draftLike(
  like: string,
  written: readonly string[],
  number: number | undefined,
  drafting: Drafting,
): Promise<number> {
  const { repository, options, context } = drafting;
  if (written.length > 0) throw new Trouble("A wish and a build to be like are named.", "Name one of them.");
  if (options.width === undefined && options.height === undefined)
    throw new Trouble("What is to be another is not said.", "Add `--width 12 ft`, in quotes, or `--height`.");
  const opened = open(repository, context);
  const path = fromRoot(repository.root, resolve(context.folder, like));
  if (!opened.documents.includes(path))
    throw new Trouble(`${like} is no build document of the docs repository.`, "Name one.");
  const { build } = opened.model(path);
  const text = repository.files.documents.find((each) => each.path === path)?.text ?? "";
  const target = targetOf(options, repository.root, context.folder);
  const name = target ? basename(target.file, ".md") : `${basename(path, ".md")}-again`;
  const data = wishLike(build, text, name, options);
  if ("says" in data && "mend" in data) throw new Trouble(`${like}: ${String(data.says)}`, String(data.mend));
  const { wish, mistakes } = readWish(
    { path, text: frontMatterText(data as Parameters<typeof frontMatterText>[0]) },
    opened.surveys.byName,
  );
  if (!wish)
    throw new Trouble(
      `${like}: ${mistakes.map(({ says }) => says).join(" ")}`,
      "Write a wish instead: `plumbmark start wish NAME`.",
    );
  const taken = new Set(repository.files.documents.map((each) => each.path));
  // The draft stands in the place of the build: what that takes is free for it.
  const others = repository.files.documents.filter((each) => each.path !== path);
  const without = { ...repository, files: { ...repository.files, documents: others } };
  const result = made(wish, target?.file ?? freePath(taken, name), { ...drafting, repository: without });
  const kept = namesKept(text, options.face);
  const found = result.drafted.options[(number ?? 1) - 1];
  const chosen = found && kept ? underNames(result.brief, name, found, kept) : undefined;
  const changes = chosen && kept ? changedFrom(text, kept.face, chosen.scheme.matter) : [];
  const left = build.faces.flatMap((each) => (each.name === kept?.face ? [] : [each.name]));
  if (target && number !== undefined) {
    const options = result.drafted.options.map((each) => (each === found && chosen ? chosen : each));
    const named = { ...result, drafted: { ...result.drafted, options } };
    const status = await writeOption(named, number, target, drafting.options.replace ?? false, context);
    context.print(changesText(like, changes, left, context), "report");
    return status;
  }
  if (options.as === "json")
    context.print(
      json({ ...result.record, like: { file: path, changes, ...(left.length > 0 ? { "not-in-it": left } : {}) } }),
      "json",
    );
  else {
    print([result.record], options.as, context);
    context.print(`\n${changesText(like, changes, left, context)}`, options.as === "text" ? "report" : "text");
  }
  return hasNoShortfall(result) ? 0 : 1;
}

/** Wishes of one name would write one document. @throws Trouble */
function refuseTwins(wishes: readonly Wish[]): void {
  const twin = wishes.find(({ name }, index) => wishes.findIndex((each) => each.name === name) !== index);
  if (twin)
    throw new Trouble(`${twin.file}: another wish is called \`${twin.name}\`, too.`, "Give one of them another name.");
}

/** The options of one wish as they are shown to a client. */
async function sheetOf({ drafted, record }: Made, { repository, context }: Drafting): Promise<string> {
  const { optionSheet } = await import("@plumbmark/docs-site");
  const opened = open(repository, context);
  const path = freePath(new Set(opened.documents), record.wish);
  const subjects = drafted.options.map(({ document }) => {
    opened.replace(path, document, "document");
    return opened.model(path);
  });
  return optionSheet({ record, subjects, today: context.today });
}

/** Writes the options of one wish side by side, as a page of its own. @throws Trouble */
async function writeSheet([first, ...more]: readonly Made[], to: string, drafting: Drafting): Promise<number> {
  if (!first || more.length > 0) throw new Trouble("A sheet shows the options of one wish.", "Name one wish.");
  const { context, options } = drafting;
  const path = resolve(context.folder, to);
  if (!/\.html$/iu.test(path)) throw new Trouble(`\`${to}\` is no page.`, "Let its name end in `.html`.");
  if (existsSync(path) && !options.replace)
    throw new Trouble(`\`${to}\` is there already.`, "Name another place, or add `--replace`.");
  await write({ path, file: to }, await sheetOf(first, drafting), options.replace ?? false);
  const { length } = first.drafted.options;
  context.print(`${to} shows ${length} option${length === 1 ? "" : "s"} of ${first.wish.name}.\n`);
  return hasNoShortfall(first) ? 0 : 1;
}

/** Prints what serves all of several wishes; status 1 when nothing does. */
function printTogether(all: readonly Made[], { repository, options, context }: Drafting): number {
  const result = drawnTogether(all, open(repository, context));
  if (options.as === "json")
    context.print(json({ together: 1, ...result, wishes: all.map(({ record }) => record) }), "json");
  else if (options.as === "markdown") context.print(togetherMarkdown(result));
  else context.print(togetherText(result, context), "report");
  return result.purchases.length > 0 ? 0 : 1;
}

const surveysIn = ({ surveys = [] }: DocsRepository["files"]): ReadonlyMap<string, Survey> =>
  readSurveys(surveys).byName;

async function writeOption(
  { drafted }: Made,
  number: number,
  target: Target,
  replace: boolean,
  context: CommandContext,
): Promise<number> {
  const option = drafted.options[number - 1];
  if (!option) {
    const there = drafted.options.length;
    throw new Trouble(
      `There is no option ${number}.`,
      there === 0
        ? "No option meets the wish; draft it without `--option` to see why."
        : `There are ${there}: 1 to ${there}.`,
    );
  }
  await write(target, option.document, replace);
  const left = option.toFindOut.length;
  context.print(
    `${target.file} is written: option ${number}, a draft. ${left} thing${left === 1 ? " is" : "s are"} still to be found out; they are listed in it under Scope.\n`,
  );
  return option.shortfall.length === 0 ? 0 : 1;
}
