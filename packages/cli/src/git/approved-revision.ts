import { ask, text } from "./run.js";

/**
 * The commit an approval came in with: the newest that brought its code into the document. Undefined where git is not
 * there, or knows of none. @param folder of the docs repository @param file from there
 */
export async function approvedIn(folder: string, file: string, code: string): Promise<string | undefined> {
  const words = ["log", "-1", "--format=%H", "--no-ext-diff", "--no-textconv", `-S${code}`, "--", `./${file}`];
  const found = await ask(folder, words).catch(() => undefined);
  return found?.status === 0 ? text(found.out) || undefined : undefined;
}
