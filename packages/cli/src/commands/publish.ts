import { resolve } from "node:path";
import { publish, SiteError, writeSite } from "@plumbmark/docs-site";
import type { Surroundings } from "../surroundings.js";
import { Trouble } from "../trouble.js";
import { open } from "./open.js";

export interface PublishOptions {
  readonly to: string;
  readonly standard?: string;
  /** False with `--no-plugins`. */
  readonly plugins?: boolean;
}

/** Publishes a docs repository as a static site; gives the exit status. */
export async function publishCommand(
  folder: string | undefined,
  options: PublishOptions,
  around: Surroundings,
): Promise<number> {
  const paths = folder === undefined ? [] : [folder];
  const { files, rules, unreadable } = await open({
    folder: around.folder,
    paths,
    standard: options.standard,
    today: around.today,
    plugins: options.plugins,
    warn: around.warn,
  });
  // A build left out of the register would look as if it did not exist.
  if (unreadable.length > 0)
    throw new Trouble(
      `${unreadable.map(({ path }) => path).join(", ")} cannot be read.`,
      "Make every file of the docs repository readable, or move it out.",
    );
  const pages = publish({ files, rules, today: around.today });
  const to = resolve(around.folder, options.to);
  await writeSite(pages, to).catch((error: unknown) => {
    if (!(error instanceof SiteError)) throw error;
    throw new Trouble(error.message, "Name a new or empty folder, or one that was published before.");
  });
  around.print(`${pages.size} files are in ${to}\nOpen ${resolve(to, "index.html")} in a browser.\n`);
  return 0;
}
