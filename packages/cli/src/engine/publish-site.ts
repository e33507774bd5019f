import { type CheckEntry, type DocumentFile, type SourceFile, unusedPlugins } from "@plumbmark/core";
import {
  type DocumentSummary,
  fillSite,
  type Into,
  mistakenSheets,
  type Put,
  putFile,
  SiteError,
  sharedFiles,
  siteOf,
  type Unshown,
  type WishesInput,
} from "@plumbmark/docs-site";
import { plain } from "../report/lines.js";
import { readFiles } from "../repository/read-files.js";
import { disk } from "../source/disk.js";
import { notWritten } from "../terminal/system-fault.js";
import { Trouble } from "../terminal/trouble.js";
import type { ResultCache } from "./cache/cache.js";
import type { Means, PublishRequest, PublishResult } from "./engine.js";
import { type Opened, openWithRules } from "./open.js";
import { type MadeSheet, putSheet, type SheetsInput } from "./sheet-writer.js";

/** The sheets that are to be made, and where what is cached of them may be. */
export interface SheetsWork {
  readonly input: SheetsInput;
  readonly cache: ResultCache | undefined;
  /** Called for every file that was put into the site. */
  readonly onFile: () => void;
}

/** The wishes that are to be drafted, and where what is cached of them may be. */
export interface WishesWork {
  readonly wishes: readonly SourceFile[];
  readonly input: WishesInput;
  readonly cache: ResultCache | undefined;
  readonly progress: (words: string) => void;
}

/** The sheets of all documents, in their order. */
export interface SheetsMade {
  readonly made: readonly MadeSheet[];
  /** Documents whose sheets were made this time. */
  readonly anew: readonly string[];
  /** Pictures that these do not show, and why. */
  readonly unshown: readonly Unshown[];
}

export const filesText = (count: number): string => `${count} ${count === 1 ? "file" : "files"}`;

/** A path may be as long as a document. */
const shown = (src: string): string => (src.length > 100 ? `${plain(src.slice(0, 100))}…` : plain(src));

/** A sheet shows a picture twice where the document does: it is told once, where it stands. */
const unshownText = ({ at, src, why }: Unshown): string =>
  `plumbmark: ${plain(at)}: the picture ${src === "" ? "" : `${shown(src)} `}is not shown: ${why}.\n`;

/** Why a plugin could not be used, and what to do: it is the same on every sheet. */
const unusedText = ({ says, mend }: CheckEntry): string => `plumbmark: ${plain(says)} ${plain(mend ?? "")}\n`;

const pluginFailed = ({ judged }: DocumentSummary): boolean => (judged["plugin.failed"]?.fails ?? 0) > 0;

/** A build left out of the register would look as if it did not exist. */
function refuseUnreadable(unreadable: Opened["unreadable"]): void {
  if (unreadable.length === 0) return;
  throw new Trouble(
    unreadable.map(({ path, says, at }) => `${path}${at ? `:${at.line}:${at.column}` : ""}: ${says}`).join("\n"),
    "A site has every file of the docs repository: make each readable, or move it out.",
  );
}

interface Filled extends Omit<SheetsMade, "made"> {
  readonly put: readonly Put[];
  readonly failed: boolean;
}

/** Puts every file of the site into the folder it is made in. */
async function fill(
  { root, rules, cache, files: read }: Opened,
  documents: readonly DocumentFile[],
  wishFiles: readonly SourceFile[],
  { today, venueProse, progress = () => undefined }: PublishRequest,
  into: Into,
  onFile: () => void,
  { makeSheets, draftWishes, shapes: shapesBy }: Means,
): Promise<Filled> {
  const files = { ...read, documents };
  const site = siteOf({ files, rules, today });
  const input = { files, rules, today, root, places: site.places, into };
  const { made, ...rest } = await makeSheets({ input, cache, onFile });
  const mistaken = Array.from(mistakenSheets(site), (sheet) => putSheet(sheet, into));
  const listed = [...made, ...mistaken].map((each) => each.summary);
  const put = [...made, ...mistaken].flatMap((each) => each.put);
  const drafting = { input: { files, rules, today }, cache };
  const wishes = await draftWishes({ ...drafting, wishes: wishFiles, progress });
  const shapes = await shapesBy(drafting);
  for (const file of sharedFiles(site, files, listed, { venueProse, wishes, shapes })) {
    put.push(putFile(into, file));
    onFile();
  }
  return { put, ...rest, failed: listed.some(pluginFailed) };
}

/** Publishes a docs repository as a static site. */
export const publishBy =
  (means: Means) =>
  async (request: PublishRequest): Promise<PublishResult> => {
    const { to, warn, progress = () => undefined } = request;
    const opened = await openWithRules(request, means);
    const { root, rules, cache, settings } = opened;
    const tree = disk.treeAt(root);
    const wishes = await readFiles(tree, await tree.find(settings.wishes));
    refuseUnreadable([...opened.unreadable, ...wishes.unreadable]);
    const documents = await means.outline(opened.files, cache);
    cache?.save();
    let count = 0;
    const onFile = (): void => {
      count += 1;
      progress(`${filesText(count)} of about ${18 * documents.length + rules.length}`);
    };
    progress(`Inspecting ${filesText(documents.length)}`);
    let filled: Filled = { put: [], anew: [], unshown: [], failed: false };
    const written = await fillSite(to, async (into) => {
      filled = await fill(opened, documents, wishes.files, request, into, onFile, means);
      return filled.put;
    })
      .catch((error: unknown) => {
        if (error instanceof SiteError) throw new Trouble(error.message, error.mend);
        throw notWritten("The site", to, error, "What was there before is as it was.");
      })
      .finally(() => progress(""));
    // What is cached of it is of use only once it stands.
    cache?.save();
    for (const told of new Set(filled.unshown.map(unshownText))) warn(told);
    for (const each of unusedPlugins(rules)) if (each.outcome === "fails") warn(unusedText(each));
    return { ...written, root, failed: filled.failed, anew: filled.anew };
  };
