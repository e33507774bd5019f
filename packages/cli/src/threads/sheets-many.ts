import { Worker } from "node:worker_threads";
import { type DocumentFile, type RepositoryFiles, type RuleOutcome, StandardError } from "@plumbmark/core";
import type { Listed } from "@plumbmark/docs-site";
import { ownFile } from "../own-file.js";
import { type Brought, broughtBy, canBeSent, outcomesOn } from "./brought.js";
import { threadsFor } from "./inspect-many.js";
import { type MadeSheets, makeSheets, type Sheets } from "./sheets.js";

/** A share as a thread is sent it: what the rules of plugins came to on its documents goes with it. */
export interface SentSheets extends Omit<Sheets, "rules"> {
  readonly brought: Brought;
  readonly found: ReadonlyMap<string, readonly RuleOutcome[]>;
}

/** What a thread tells: a file that is made, all that was made, or the mistake of ours that ended it. */
export type SheetsAnswer =
  | "file"
  | { readonly made: MadeSheets }
  | { readonly failed: string; readonly name: string; readonly stack: string; readonly code: string | undefined };

/** Documents dealt out in turn: neighbours in a folder are alike, and one thread is not to have all the large ones. */
const deal = (documents: readonly DocumentFile[], hands: number): readonly (readonly DocumentFile[])[] =>
  Array.from({ length: hands }, (_, hand) => documents.filter((_, index) => index % hands === hand));

/** The share of one hand: its documents, and of the others what they share. */
function shareOf(files: RepositoryFiles, documents: readonly DocumentFile[]): RepositoryFiles {
  const own = new Set(documents);
  const rest = files.documents.flatMap((file) => (own.has(file) || !file.outline ? [] : [file.outline]));
  return { ...files, documents, others: [...(files.others ?? []), ...rest] };
}

const sentOf = ({ rules, ...sheets }: Sheets): SentSheets => ({
  ...sheets,
  brought: broughtBy(rules),
  found: new Map(sheets.files.documents.map(({ path }) => [path, outcomesOn(rules, path)])),
});

/** Has a thread make sheets; undefined when the thread could not be had. */
function onThread(sheets: Sheets, onFile: () => void): Promise<SheetsAnswer | undefined> {
  return new Promise((resolve) => {
    let thread: Worker | undefined;
    const end = (answer?: SheetsAnswer): void => {
      resolve(answer);
      void thread?.terminate();
    };
    try {
      thread = new Worker(ownFile("dist/sheets.js"), { execArgv: [] });
      thread.on("message", (answer: SheetsAnswer) => (answer === "file" ? onFile() : end(answer)));
      for (const event of ["messageerror", "error", "exit"]) thread.once(event, () => end());
      thread.postMessage(sentOf(sheets));
    } catch {
      end();
    }
  });
}

/** What a thread made; the mistake that ended it is the mistake here, with the code by which a disk refuses. */
function madeOf(answer: SheetsAnswer): MadeSheets {
  if (answer !== "file" && "made" in answer) return answer.made;
  const { failed, name, stack, code } = answer as Extract<SheetsAnswer, { readonly failed: string }>;
  const error = name === "StandardError" ? new StandardError(failed) : new Error(failed);
  throw Object.assign(error, { stack }, code === undefined ? {} : { code });
}

/**
 * Makes the sheets of documents whose outlines are known, in their order. Many are dealt out to threads, of which this
 * is one; a share whose thread cannot be had is made here. The files are the same however many threads there are.
 * @throws StandardError when the house standard cannot be used.
 */
export async function makeManySheets(
  sheets: Sheets,
  onFile: () => void,
  threads = threadsFor(sheets.files.documents.length),
): Promise<MadeSheets> {
  if (threads < 2 || !canBeSent(sheets.rules)) return makeSheets(sheets, onFile);
  const shares = deal(sheets.files.documents, threads).map(
    (documents): Sheets => ({ ...sheets, files: shareOf(sheets.files, documents) }),
  );
  const [own, ...sent] = shares as [Sheets, ...Sheets[]];
  const answers = sent.map((share) => onThread(share, onFile));
  const made: MadeSheets[] = [makeSheets(own, onFile)];
  for (const [index, answer] of (await Promise.all(answers)).entries())
    made.push(answer ? madeOf(answer) : makeSheets(sent[index] as Sheets, onFile));
  const listed = sheets.files.documents.map(
    (_, index) => made[index % threads]?.listed[Math.floor(index / threads)] as Listed,
  );
  return { listed, put: made.flatMap(({ put }) => put), unshown: made.flatMap(({ unshown }) => unshown) };
}
