import type { DocumentFile } from "@plumbmark/core";
import { broughtBy, canBeSent } from "./brought.js";
import { dismiss, hire } from "./crew.js";
import { deal, sharesOf, threadsFor } from "./deal.js";
import { frameOf } from "./inspect-many.js";
import { sending } from "./sending.js";
import { type MadeOf, type Sheets, sheetWriter } from "./sheets.js";

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
  const here = () => {
    const write = sheetWriter({ ...plain, rules });
    return (share: readonly DocumentFile[]): readonly MadeOf[] => share.map((file) => write(file));
  };
  const crew = hire(threads, documents.length);
  const asks = sending(crew, { work: "sheets", frame: { ...plain, brought: broughtBy(rules) } }, rules);
  try {
    const found = await deal(sharesOf(documents, threads), asks, here, (answer) => answer.forEach(told));
    return found.flat();
  } finally {
    await dismiss(crew);
  }
}
