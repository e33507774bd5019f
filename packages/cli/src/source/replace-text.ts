import { lstat, readFile } from "node:fs/promises";
import { removeLeftovers, writeInPlace } from "@plumbmark/in-place";
import { systemFault } from "../terminal/system-fault.js";
import { Trouble } from "../terminal/trouble.js";

/** A byte order mark is no part of a text, and stays where it is. */
const MARK = "\uFEFF";

/**
 * Puts a text in the place of another, whole or not at all.
 * @param was the text as it was read; a file that is another by now is left alone
 * @param what is to be written, for what is told: `The approval`
 * @throws Trouble
 */
export async function replaceText(path: string, was: string, is: string, what: string): Promise<void> {
  try {
    await removeLeftovers(path);
    const found = await lstat(path);
    if (found.isSymbolicLink())
      throw new Trouble("It is a link to another file; nothing was written.", "Name the file that it leads to.");
    const text = await readFile(path, "utf8");
    const mark = text.startsWith(MARK) ? MARK : "";
    if (text !== mark + was)
      throw new Trouble("It was changed meanwhile; nothing was written.", "Look at it again, and begin anew.");
    writeInPlace(path, mark + is, { flush: true, mode: found.mode });
  } catch (error) {
    if (error instanceof Trouble) throw error;
    const { says, mend } = systemFault(error) ?? { says: String(error), mend: "Look at the disk." };
    throw new Trouble(`${what} cannot be written. ${says}`, mend);
  }
}
