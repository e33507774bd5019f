import { resolve } from "node:path";
import { SiteError, siteFiles, type Written, writeSite } from "@plumbmark/docs-site";
import { pictureReader } from "../files/read-picture.js";
import { notWritten } from "../files/system-fault.js";
import type { Surroundings } from "../surroundings.js";
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

/** Publishes once; gives what was written and the root that was read. */
async function publishOnce(
  folder: string | undefined,
  { to, standard, plugins }: PublishOptions,
  around: Surroundings,
): Promise<Written & { readonly root: string }> {
  const paths = folder === undefined ? [] : [folder];
  const { files, rules, unreadable, root } = await open({
    folder: around.folder,
    paths,
    standard,
    today: around.today,
    plugins,
    warn: around.warn,
  });
  // A build left out of the register would look as if it did not exist.
  if (unreadable.length > 0)
    throw new Trouble(
      `${unreadable.map(({ path }) => path).join(", ")} cannot be read.`,
      "Make every file of the docs repository readable, or move it out.",
    );
  let count = 0;
  const progress = (): void => {
    count += 1;
    around.progress?.(`${counted(count)} of about ${2 * files.documents.length + rules.length}`);
  };
  around.progress?.(`Inspecting ${counted(files.documents.length)}`);
  const input = { files, rules, today: around.today, picture: pictureReader(root) };
  const place = resolve(around.folder, to);
  const written = await writeSite(siteFiles(input), place, progress)
    .catch((error: unknown) => {
      if (error instanceof SiteError) throw new Trouble(error.message, error.mend);
      throw notWritten("The site", place, error, "What was there before is as it was.");
    })
    .finally(() => around.progress?.(""));
  return { ...written, root };
}

/** Publishes a docs repository as a static site, again and again when it is watched; gives the exit status. */
export async function publishCommand(
  folder: string | undefined,
  options: PublishOptions,
  around: Surroundings,
): Promise<number> {
  const to = resolve(around.folder, options.to);
  const { written, unchanged, root } = await publishOnce(folder, options, around);
  around.print(`${counted(written + unchanged)} are in ${to}\nOpen ${resolve(to, "index.html")} in a browser.\n`);
  if (!options.watch) return 0;
  around.print("Watching; stop with Ctrl-C.\n");
  await watch(root, to, around, async () => {
    const again = await publishOnce(folder, options, around);
    around.print(`${counted(again.written)} written, ${again.unchanged} as before\n`);
  });
  return 0;
}
