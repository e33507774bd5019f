import { existsSync, statSync } from "node:fs";
import { resolve } from "node:path";
import { removeLeftovers, writeInPlace } from "@plumbmark/in-place";
import { fromRoot, isOutside } from "../source/paths.js";
import { systemFault } from "../terminal/system-fault.js";
import { Trouble } from "../terminal/trouble.js";
import type { DraftOptions } from "./options.js";

export interface DraftTarget {
  /** On the disk. */
  readonly path: string;
  /** From the root of the docs repository. */
  readonly file: string;
}

/** Where the document goes. @throws Trouble when something is there that is not to be replaced */
export function draftTarget({ to, replace }: DraftOptions, root: string, folder: string): DraftTarget | undefined {
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

/** Writes a document or a page in place, whole or not at all. @throws Trouble */
export async function writeTo({ path }: DraftTarget, text: string, replace: boolean): Promise<void> {
  try {
    await removeLeftovers(path);
    writeInPlace(path, text, { flush: true, onlyNew: !replace });
  } catch (error) {
    const { says, mend } = systemFault(error) ?? { says: String(error), mend: "Look at the disk." };
    throw new Trouble(`The document cannot be written. ${says}`, mend);
  }
}
