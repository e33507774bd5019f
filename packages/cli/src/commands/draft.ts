import { readFile } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import { type Mistake, readSurveys, type Survey } from "@plumbmark/core";
import { drawnTogether, freePath, readWish, type Wish } from "@plumbmark/draft";
import { judgedByPlugins } from "../drafting/by-plugins.js";
import { draftLike } from "../drafting/like.js";
import { type Drafting, draftingIn, hasNoShortfall, type Made, made, opened } from "../drafting/made.js";
import { type DraftOptions, limitOf, optionNumber, refuseWithoutLike } from "../drafting/options.js";
import { printDrafts } from "../drafting/print.js";
import { writeSheet } from "../drafting/sheet.js";
import { draftTarget } from "../drafting/target.js";
import { writeOption } from "../drafting/write-option.js";
import { togetherMarkdown, togetherText } from "../report/draft/together.js";
import { json } from "../report/form.js";
import { type DocsRepository, readRepository } from "../repository/read-repository.js";
import { disk } from "../source/disk.js";
import { fromRoot } from "../source/paths.js";
import type { CommandContext } from "../terminal/context.js";
import { systemFault } from "../terminal/system-fault.js";
import { Trouble } from "../terminal/trouble.js";

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

/** Wishes that are named, or all there are. @throws Trouble when there are none */
async function pathsOf(written: readonly string[], { root, settings }: DocsRepository): Promise<readonly string[]> {
  if (written.length > 0) return written;
  const found = await disk.treeAt(root).find(settings.wishes);
  if (found.length === 0)
    throw new Trouble("The docs repository has no wish.", "Begin one with `plumbmark start wish NAME`.");
  return found.map((path) => join(root, path));
}

/**
 * Drafts builds from wishes and prints the options, or writes one of them. Gives the exit status: 0 of each wish at least
 * one option needs nothing that is not there, 1 of one none does. @throws Trouble when it cannot be carried out
 */
export async function draftCommand(
  written: readonly string[],
  options: DraftOptions,
  context: CommandContext,
): Promise<number> {
  const number = optionNumber(options);
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
  const target = draftTarget(options, root, context.folder);
  const taken = new Set(files.documents.map(({ path }) => path));
  const drafting = draftingIn(repository, options, context);
  const own = (wish: Wish): Wish => (options.together ? { ...wish, outOf: "catalogue" } : wish);
  const all: Made[] = [];
  for (const wish of wishes) {
    const path = target?.file ?? freePath(taken, wish.name);
    all.push(await judgedByPlugins(made(own(wish), path, drafting), path, drafting));
  }
  if (options.together) return printTogether(all, drafting);
  if (target && number !== undefined)
    return writeOption(all[0] as Made, number, target, options.replace ?? false, context);
  if (options.sheet !== undefined) return writeSheet(all, options.sheet, drafting);
  printDrafts(
    all.map(({ record }) => record),
    options.as,
    context,
  );
  return all.every(hasNoShortfall) ? 0 : 1;
}

/** Wishes of one name would write one document. @throws Trouble */
function refuseTwins(wishes: readonly Wish[]): void {
  const twin = wishes.find(({ name }, index) => wishes.findIndex((each) => each.name === name) !== index);
  if (twin)
    throw new Trouble(`${twin.file}: another wish is called \`${twin.name}\`, too.`, "Give one of them another name.");
}

/** Prints what serves all of several wishes; status 1 when nothing does. */
function printTogether(all: readonly Made[], { repository, options, context }: Drafting): number {
  const result = drawnTogether(all, opened(repository, context));
  const notLookedAt = [...new Set(all.flatMap(({ drafted }) => drafted.notLookedAt))];
  if (options.as === "json")
    context.print(json({ together: 1, ...result, wishes: all.map(({ record }) => record) }), "json");
  else if (options.as === "markdown") context.print(togetherMarkdown(result, notLookedAt));
  else context.print(togetherText(result, notLookedAt, context), "report");
  return result.purchases.length > 0 ? 0 : 1;
}

const surveysIn = ({ surveys = [] }: DocsRepository["files"]): ReadonlyMap<string, Survey> =>
  readSurveys(surveys).byName;
