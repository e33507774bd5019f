import type { DocumentFile } from "@plumbmark/core";
import { type SheetsInput, sheetWriter, type WrittenSheet } from "../sheet-writer.js";
import { withoutDocuments } from "./inspect-many.js";
import { isTransferable, pluginResultsOf } from "./plugin-results.js";
import { runInPool } from "./pool.js";
import { workersFor } from "./schedule.js";

/**
 * Makes the sheets of documents whose outlines are known, in their order. Many are handed out to workers in small batches;
 * what workers that cannot be had, or die, leave undone is made here. The files are the same however many there are.
 * @param onFile is called for every file that was put
 * @throws StandardError when the house standard cannot be used.
 */
export async function makeManySheets(
  input: SheetsInput,
  onFile: () => void,
  count = workersFor(input.files.documents.length),
): Promise<readonly WrittenSheet[]> {
  const received = (sheets: readonly WrittenSheet[]): readonly WrittenSheet[] => {
    for (const _ of sheets.flatMap(({ put }) => put)) onFile();
    return sheets;
  };
  const { documents } = input.files;
  if (count === 0 || !isTransferable(input.rules)) {
    const write = sheetWriter(input);
    return documents.flatMap((file) => received([write(file)]));
  }
  const { rules, root, places, into, today } = input;
  const plain = { root, places, into, today, files: withoutDocuments(input.files) };
  const here = () => {
    const write = sheetWriter({ ...plain, rules });
    return (batch: readonly DocumentFile[]) => received(batch.map((file) => write(file)));
  };
  const task = { work: "sheets", context: { ...plain, plugins: pluginResultsOf(rules) } } as const;
  return (await runInPool(documents, count, { task, rules, here, received })).flat();
}
