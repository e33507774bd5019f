import { resolve } from "node:path";
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
  type Written,
} from "@plumbmark/docs-site";
import { notWritten } from "../files/system-fault.js";
import { type Kept, keptFor, save } from "../kept/kept.js";
import { withOutlines } from "../kept/outlines.js";
import { type KeptSheets, makeSheetsKept } from "../kept/sheets.js";
import { standingSheets } from "../kept/standing-sheets.js";
import { plain } from "../report/lines.js";
import type { Surroundings } from "../surroundings.js";
import { putSheet } from "../threads/sheets.js";
import { Trouble } from "../trouble.js";
import { type Opening, open } from "./open.js";

export interface PublishOptions {
  readonly to: string;
  readonly standard?: string;
  /** False with `--no-plugins`. */
  readonly plugins?: boolean;
  readonly watch?: boolean;
}

export const counted = (count: number): string => `${count} ${count === 1 ? "file" : "files"}`;

/** A sheet shows a picture twice where the document does: it is told once, where it stands. */
const toldOf = ({ at, src, why }: Unshown): string =>
  `plumbmark: ${plain(at)}: the picture ${src === "" ? "" : `${shown(src)} `}is not shown: ${why}.\n`;

/** A path may be as long as a document. */
const shown = (src: string): string => (src.length > 100 ? `${plain(src.slice(0, 100))}…` : plain(src));

export interface Published extends Written {
  readonly root: string;
  /** Whether a plugin failed somewhere: part of the inspection could not be carried out. */
  readonly failed: boolean;
  /** Its sheets, for the next publish in this process. */
  readonly sheets: KeptSheets;
}

const pluginFailed = ({ judged }: DocumentSummary): boolean => (judged["plugin.failed"]?.fails ?? 0) > 0;

/** What earlier publishes left for a docs repository. */
type KeptOf = (root: string) => Kept | undefined;

/** Reads everything, with the outlines of the documents. @throws Trouble when a file cannot be read */
async function opened(opening: Opening, keptOf: KeptOf) {
  const { rules, unreadable, root, files } = await open(opening);
  // A build left out of the register would look as if it did not exist.
  if (unreadable.length > 0)
    throw new Trouble(
      unreadable.map(({ path, says, at }) => `${path}${at ? `:${at.line}:${at.column}` : ""}: ${says}`).join("\n"),
      "A site has every file of the docs repository: make each readable, or move it out.",
    );
  const kept = keptOf(root);
  const documents = await withOutlines(files, kept);
  save(kept);
  return { files: { ...files, documents }, rules, root, today: opening.today, kept };
}

type Opened = Awaited<ReturnType<typeof opened>>;

/** Puts every file of a site there. */
async function fill(
  { kept: shelves, ...all }: Opened,
  into: Into,
  earlier: KeptSheets | undefined,
  onFile: () => void,
) {
  const site = siteOf(all);
  const standing = shelves && standingSheets(shelves.sheets, into.folder);
  const sheets = { ...all, places: site.places, standing };
  const { made, kept, unshown } = await makeSheetsKept(sheets, into, earlier, onFile);
  const mistaken = Array.from(mistakenSheets(site), (sheet) => putSheet(sheet, into));
  const listed = [...made, ...mistaken].map((each) => each.summary);
  const put = [...made, ...mistaken].flatMap((each) => each.put);
  for (const file of sharedFiles(site, all.files, listed)) {
    put.push(putFile(into, file));
    onFile();
  }
  return { put, sheets: kept, unshown, failed: listed.some(pluginFailed) };
}

/**
 * Publishes once.
 * @param earlier sheets of the publish before in this process: those that would come out the same are not made again;
 * undefined when it is the only one
 */
export async function publishOnce(
  folder: string | undefined,
  { to, standard, plugins }: PublishOptions,
  around: Surroundings,
  earlier: KeptSheets | undefined,
  keptOf: KeptOf = (root) => keptFor(root, true),
): Promise<Published> {
  const paths = folder === undefined ? [] : [folder];
  const { today, warn } = around;
  const all = await opened({ folder: around.folder, paths, standard, today, plugins, warn }, keptOf);
  const { length } = all.files.documents;
  let count = 0;
  const onFile = (): void => {
    count += 1;
    around.progress?.(`${counted(count)} of about ${18 * length + all.rules.length}`);
  };
  around.progress?.(`Inspecting ${counted(length)}`);
  const place = resolve(around.folder, to);
  let filled: Omit<Awaited<ReturnType<typeof fill>>, "put"> = { sheets: new Map(), unshown: [], failed: false };
  const put = async (into: Into): Promise<readonly Put[]> => {
    const { put: files, ...rest } = await fill(all, into, earlier, onFile);
    filled = rest;
    return files;
  };
  const written = await fillSite(place, put)
    .catch((error: unknown) => {
      if (error instanceof SiteError) throw new Trouble(error.message, error.mend);
      throw notWritten("The site", place, error, "What was there before is as it was.");
    })
    .finally(() => around.progress?.(""));
  // What is kept of it is of use only once it stands.
  all.kept?.sheets.save();
  for (const told of new Set(filled.unshown.map(toldOf))) warn(told);
  return { ...written, root: all.root, failed: filled.failed, sheets: filled.sheets };
}
