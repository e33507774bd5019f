import { resolve } from "node:path";
import {
  fillSite,
  type Into,
  type Listed,
  mistakenSheets,
  outlined,
  type Put,
  putFile,
  SiteError,
  sharedFiles,
  siteOf,
  type Written,
} from "@plumbmark/docs-site";
import { notWritten } from "../files/system-fault.js";
import type { Surroundings } from "../surroundings.js";
import { putSheets } from "../threads/sheets.js";
import { makeManySheets } from "../threads/sheets-many.js";
import { Trouble } from "../trouble.js";
import { open } from "./open.js";
import { watch } from "./watch.js";

export interface PublishOptions {
  readonly to: string;
  readonly standard?: string;
  /** False with `--no-plugins`. */
  readonly plugins?: boolean;
  readonly watch?: boolean;
}

const counted = (count: number): string => `${count} ${count === 1 ? "file" : "files"}`;

interface Published extends Written {
  readonly root: string;
  /** Whether a plugin failed somewhere: part of the inspection could not be carried out. */
  readonly failed: boolean;
}

const pluginFailed = ({ judged }: Listed): boolean => (judged["plugin.failed"]?.fails ?? 0) > 0;

/** Publishes once; gives what was written and the root that was read. */
async function publishOnce(
  folder: string | undefined,
  { to, standard, plugins }: PublishOptions,
  around: Surroundings,
): Promise<Published> {
  const paths = folder === undefined ? [] : [folder];
  const { today, warn } = around;
  const opened = await open({ folder: around.folder, paths, standard, today, plugins, warn });
  const { rules, unreadable, root } = opened;
  // A build left out of the register would look as if it did not exist.
  if (unreadable.length > 0)
    throw new Trouble(
      `${unreadable.map(({ path }) => path).join(", ")} cannot be read.`,
      "Make every file of the docs repository readable, or move it out.",
    );
  const files = { ...opened.files, documents: opened.files.documents.map(outlined) };
  let count = 0;
  const onFile = (): void => {
    count += 1;
    around.progress?.(`${counted(count)} of about ${18 * files.documents.length + rules.length}`);
  };
  around.progress?.(`Inspecting ${counted(files.documents.length)}`);
  let listed: readonly Listed[] = [];
  let unshown: ReadonlyMap<string, string> = new Map();
  const fill = async (into: Into): Promise<readonly Put[]> => {
    const site = siteOf({ files, rules, today });
    const made = await makeManySheets({ files, rules, today, root, into, places: site.places }, onFile);
    unshown = new Map(made.unshown);
    const mistaken = putSheets(mistakenSheets(site), into, onFile);
    listed = [...made.listed, ...mistaken.listed];
    const shared: Put[] = [];
    for (const file of sharedFiles(site, files, listed)) {
      shared.push(putFile(into, file));
      onFile();
    }
    return [...made.put, ...mistaken.put, ...shared];
  };
  const place = resolve(around.folder, to);
  const written = await fillSite(place, fill)
    .catch((error: unknown) => {
      if (error instanceof SiteError) throw new Trouble(error.message, error.mend);
      throw notWritten("The site", place, error, "What was there before is as it was.");
    })
    .finally(() => around.progress?.(""));
  for (const [path, why] of unshown) warn(`plumbmark: the picture ${path} is not shown: ${why}.\n`);
  return { ...written, root, failed: listed.some(pluginFailed) };
}

const FAILED = "plumbmark: a plugin failed; the sheets say where. Everything else was inspected and is published.\n";

/** As of an inspection: 2 when part of it could not be carried out. The pages themselves say what is not ready. */
const statusOf = ({ failed }: Published, { warn }: Surroundings): number => {
  if (failed) warn(FAILED);
  return failed ? 2 : 0;
};

/** Publishes a docs repository as a static site, again and again when it is watched; gives the exit status. */
export async function publishCommand(
  folder: string | undefined,
  options: PublishOptions,
  around: Surroundings,
): Promise<number> {
  const to = resolve(around.folder, options.to);
  const first = await publishOnce(folder, options, around);
  const { written, unchanged, root } = first;
  around.print(`${counted(written + unchanged)} are in ${to}\nOpen ${resolve(to, "index.html")} in a browser.\n`);
  let status = statusOf(first, around);
  if (!options.watch) return status;
  around.print("Watching; stop with Ctrl-C.\n");
  await watch(root, to, around, async () => {
    const again = await publishOnce(folder, options, around);
    status = statusOf(again, around);
    around.print(`${counted(again.written)} written, ${again.unchanged} as before\n`);
  });
  return status;
}
