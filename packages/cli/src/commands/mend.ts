import { resolve } from "node:path";
import {
  type EndedApproval,
  type MadeMend,
  type MendedFile,
  type MendedRepository,
  mendRepository,
  openRepository,
  stockFiles,
} from "@plumbmark/core";
import { type Opened, openWithRules } from "../engine/open.js";
import { plainMeans } from "../engine/plain.js";
import { differenceText } from "../report/difference-text.js";
import { disk } from "../source/disk.js";
import { overlaid } from "../source/overlaid.js";
import { fromRoot } from "../source/paths.js";
import { replaceText } from "../source/replace-text.js";
import type { CommandContext } from "../terminal/context.js";
import { Trouble } from "../terminal/trouble.js";

export interface MendOptions {
  readonly show?: true;
  readonly standard?: string;
  /** False with `--no-plugins`. */
  readonly plugins?: boolean;
}

/** A plugin looks at the texts on the disk: what was mended is put to it again, and no plugin needs more than this. */
const MOST_PASSES = 4;

interface Mended extends MendedRepository {
  readonly opened: Opened;
}

/** Changes of one pass behind those of earlier ones. */
function joined(earlier: readonly MendedFile[], later: readonly MendedFile[]): readonly MendedFile[] {
  const files = new Map(earlier.map((file) => [file.path, file]));
  for (const file of later) {
    const before = files.get(file.path);
    files.set(file.path, before ? { ...file, was: before.was, made: [...before.made, ...file.made] } : file);
  }
  return [...files.values()].filter(({ was, is }) => was !== is);
}

async function mended(paths: readonly string[], options: MendOptions, context: CommandContext): Promise<Mended> {
  const { standard, plugins } = options;
  const wanted = { folder: context.folder, paths, standard, today: context.today, plugins };
  const texts = new Map<string, string>();
  let files: readonly MendedFile[] = [];
  let ended: readonly EndedApproval[] = [];
  for (let pass = 1; ; pass += 1) {
    const warn = pass === 1 ? context.warn : () => undefined;
    const opened = await openWithRules({ ...wanted, warn, source: overlaid(disk, texts) }, plainMeans);
    const repository = openRepository(opened.files, opened.rules, { today: context.today });
    const made = mendRepository(repository, opened.wants);
    files = joined(files, made.files);
    ended = [...ended, ...made.ended];
    for (const { path, is } of made.files) texts.set(resolve(opened.root, path), is);
    const hasPlugins = opened.rules.some(({ plugin }) => plugin !== undefined);
    if (made.files.length === 0 || !hasPlugins || pass === MOST_PASSES) return { files, ended, opened };
  }
}

/** A long text by its beginning. */
const brief = (text: string): string => (text.length > 60 ? `${text.slice(0, 57)}…` : text);
const quoted = (text: string): string => (text === "" ? "nothing" : `\`${brief(text.replaceAll("\t", "→"))}\``);

const madeLine = ({ line, was, becomes }: MadeMend): string =>
  `  line ${line}: ${quoted(was)} is ${quoted(becomes)} now\n`;

const count = (number: number, word: string): string => `${number} ${word}${number === 1 ? "" : "s"}`;

const endedText = ({ path, by }: EndedApproval): string =>
  `The approval of ${path}${by === undefined ? "" : ` by ${by}`} ends: it was of what stood there before. Look at it, and approve it anew.\n`;

/** Files that were named and that nothing is mended in. */
function leftAlone({ root, files, asked, unreadable }: Opened): readonly string[] {
  const { documents, parts, surveys = [] } = files;
  const known = new Set(
    [...documents, ...parts, ...surveys, ...unreadable, ...stockFiles(files)].map(({ path }) => path),
  );
  return asked.filter(({ folder, path }) => !folder && !known.has(fromRoot(root, path))).map(({ written }) => written);
}

/** Writes each file, whatever becomes of the others; gives how many were not written. */
async function written({ files, opened: { root } }: Mended, context: CommandContext): Promise<number> {
  let failed = 0;
  for (const { path, was, is, made } of files)
    try {
      await replaceText(resolve(root, path), was, is, "What was mended");
      context.print(`${path}: ${count(made.length, "change")}\n${made.map(madeLine).join("")}`);
    } catch (error) {
      if (!(error instanceof Trouble)) throw error;
      failed += 1;
      context.warn(`plumbmark: ${path}: ${error.says} ${error.mend}\n`);
    }
  return failed;
}

/**
 * Puts right what has one answer. Gives the exit status: 0 done, 1 when it was only asked what would be changed and
 * something would, 2 when a file could not be read or written. @throws Trouble when nothing can be carried out
 */
export async function mendCommand(
  paths: readonly string[],
  options: MendOptions,
  context: CommandContext,
): Promise<number> {
  const result = await mended(paths, options, context);
  const { files, ended, opened } = result;
  for (const path of leftAlone(opened))
    context.warn(`${path}: left alone. Documents, surveys, the parts catalogue and the stock list are mended.\n`);
  const unread = opened.unreadable.filter(({ path }) => opened.wants(path));
  for (const { path, says, mend } of unread) context.warn(`plumbmark: ${path}: ${says} ${mend}\n`);
  if (options.show) {
    for (const { path, was, is } of files) context.print(differenceText(path, was, is));
    for (const each of ended) context.warn(endedText(each));
    if (files.length === 0) context.warn("Nothing would be changed.\n");
    return unread.length > 0 ? 2 : files.length > 0 ? 1 : 0;
  }
  const failed = await written(result, context);
  for (const each of failed === files.length ? [] : ended) context.print(endedText(each));
  if (files.length === 0) context.print("Nothing here has one answer: nothing was changed.\n");
  return failed + unread.length > 0 ? 2 : 0;
}
