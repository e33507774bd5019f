import { existsSync } from "node:fs";
import { resolve } from "node:path";
import { freePath } from "@plumbmark/draft";
import { Trouble } from "../terminal/trouble.js";
import { type Drafting, hasNoShortfall, type Made, opened } from "./made.js";
import { writeTo } from "./target.js";

/** The options of one wish as they are shown to a client. */
async function sheetOf({ drafted, record }: Made, { repository, context }: Drafting): Promise<string> {
  const { optionSheet } = await import("@plumbmark/docs-site");
  const held = opened(repository, context);
  const path = freePath(new Set(held.documents), record.wish);
  const subjects = drafted.options.map(({ document }) => {
    held.replace(path, document, "document");
    return held.model(path);
  });
  return optionSheet({ record, subjects, today: context.today });
}

/** Writes the options of one wish side by side, as a page of its own. @throws Trouble */
export async function writeSheet([first, ...more]: readonly Made[], to: string, drafting: Drafting): Promise<number> {
  if (!first || more.length > 0) throw new Trouble("A sheet shows the options of one wish.", "Name one wish.");
  const { context, options } = drafting;
  const path = resolve(context.folder, to);
  if (!/\.html$/iu.test(path)) throw new Trouble(`\`${to}\` is no page.`, "Let its name end in `.html`.");
  if (existsSync(path) && !options.replace)
    throw new Trouble(`\`${to}\` is there already.`, "Name another place, or add `--replace`.");
  await writeTo({ path, file: to }, await sheetOf(first, drafting), options.replace ?? false);
  const { length } = first.drafted.options;
  context.print(`${to} shows ${length} option${length === 1 ? "" : "s"} of ${first.wish.name}.\n`);
  return hasNoShortfall(first) ? 0 : 1;
}
