import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import {
  type DocumentFile,
  type InspectOptions,
  inspectEach,
  type Judged,
  type RepositoryFiles,
  type Rule,
  StandardError,
} from "@plumbmark/core";
import { rules as builtIn } from "@plumbmark/rules";
import { ownFile } from "../own-file.js";
import type { Answer, Share } from "./messages.js";

/** A thread takes as long to start as this many documents to inspect. */
const WORTH_A_THREAD = 20;
const MOST_THREADS = 8;

/** How many threads are worth having; this one is among them. */
export const threadsFor = (documents: number): number =>
  Math.max(1, Math.min(availableParallelism(), MOST_THREADS, Math.floor(documents / WORTH_A_THREAD)));

/** Documents dealt out in turn: neighbours in a folder are alike, and one thread is not to have all the large ones. */
const deal = (documents: readonly DocumentFile[], hands: number): readonly (readonly DocumentFile[])[] =>
  Array.from({ length: hands }, (_, hand) => documents.filter((_, index) => index % hands === hand));

/** The share of one hand: its documents, and of the others what they share. */
function shareOf(files: RepositoryFiles, documents: readonly DocumentFile[]): RepositoryFiles {
  const own = new Set(documents);
  const rest = files.documents.flatMap((file) => (own.has(file) || !file.outline ? [] : [file.outline]));
  return { ...files, documents, others: [...(files.others ?? []), ...rest] };
}

/** Sends a share to a thread; undefined when the thread could not be had, or died over it. */
function onThread(share: Share): Promise<Answer | undefined> {
  return new Promise((resolve) => {
    let thread: Worker | undefined;
    const end = (answer?: Answer): void => {
      resolve(answer);
      void thread?.terminate();
    };
    try {
      thread = new Worker(ownFile("dist/thread.js"), { execArgv: [] });
      thread.once("message", end);
      for (const event of ["messageerror", "error", "exit"]) thread.once(event, () => end());
      thread.postMessage(share);
    } catch {
      end();
    }
  });
}

function judgedOf(answer: Answer): readonly Judged[] {
  if ("judged" in answer) return answer.judged;
  const error = answer.name === "StandardError" ? new StandardError(answer.failed) : new Error(answer.failed);
  error.stack = answer.stack;
  throw error;
}

/** Whether these are the rules a thread has by itself: code cannot be sent. */
const isBuiltIn = (rules: readonly Rule[]): boolean =>
  rules.length === builtIn.length && rules.every((rule, index) => rule === builtIn[index]);

/**
 * What documents come to, in their order, each with its outline known. Many are dealt out to threads, of which this
 * is one; a share whose thread cannot be had is inspected here.
 */
export async function inspectMany(
  files: RepositoryFiles,
  rules: readonly Rule[],
  options: InspectOptions,
  threads = threadsFor(files.documents.length),
): Promise<readonly Judged[]> {
  if (threads < 2 || !isBuiltIn(rules) || files.documents.some(({ outline }) => !outline))
    return inspectEach(files, rules, options);
  const shares = deal(files.documents, threads).map((documents) => shareOf(files, documents));
  const [own, ...sent] = shares as [RepositoryFiles, ...RepositoryFiles[]];
  const answers = sent.map((share) => onThread({ files: share, options }));
  const found: (readonly Judged[])[] = [inspectEach(own, rules, options)];
  for (const [index, answer] of (await Promise.all(answers)).entries())
    found.push(answer ? judgedOf(answer) : inspectEach(sent[index] as RepositoryFiles, rules, options));
  return files.documents.map((_, index) => found[index % threads]?.[Math.floor(index / threads)] as Judged);
}
