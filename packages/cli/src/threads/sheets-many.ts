import type { DocumentFile } from "@plumbmark/core";
import { type Brought, broughtBy, canBeSent } from "./brought.js";
import { deal, sharesOf, threadsFor } from "./deal.js";
import { hand } from "./hand.js";
import { frameOf, taking } from "./inspect-many.js";
import type { Share } from "./messages.js";
import { type MadeOf, type Sheets, sheetWriter } from "./sheets.js";

/** What a thread is told first: everything but the documents it is going to be sent. */
export interface SheetsFrame extends Omit<Sheets, "rules"> {
  readonly brought: Brought;
}

type Answer = readonly MadeOf[];

/**
 * Makes the sheets of documents whose outlines are known, in their order. Many are dealt out to threads in small shares;
 * what threads that cannot be had, or die, leave undone is made here. The files are the same however many there are.
 * @param onFile is called for every file that was put
 * @throws StandardError when the house standard cannot be used.
 */
export async function makeManySheets(
  sheets: Sheets,
  onFile: () => void,
  threads = threadsFor(sheets.files.documents.length),
): Promise<readonly MadeOf[]> {
  const told = (made: MadeOf): void => {
    for (const _ of made.put) onFile();
  };
  const { documents } = sheets.files;
  if (threads === 0 || !canBeSent(sheets.rules)) {
    const write = sheetWriter(sheets);
    return documents.map((file) => {
      const made = write(file);
      told(made);
      return made;
    });
  }
  const { rules, root, places, into, today } = sheets;
  const plain = { root, places, into, today, files: frameOf(sheets.files) };
  const frame: SheetsFrame = { ...plain, brought: broughtBy(rules) };
  const hands = Array.from({ length: threads }, () => taking(hand<Share, Answer>("sheets.js", frame), rules));
  const here = () => {
    const write = sheetWriter({ ...plain, rules });
    return (share: readonly DocumentFile[]): Answer => share.map((file) => write(file));
  };
  const found = await deal(sharesOf(documents, threads), hands, here, (answer) => answer.forEach(told));
  return found.flat();
}
