import { availableParallelism } from "node:os";
import {
  type DocumentFile,
  type InspectOptions,
  inspectEach,
  inspector,
  type Judged,
  type RepositoryFiles,
  type Rule,
} from "@plumbmark/core";
import { broughtBy, canBeSent, outcomesOn } from "./brought.js";
import { type Hand, hand } from "./hand.js";
import type { Frame, Sent } from "./messages.js";

/** A thread takes as long to start as this many documents to inspect. */
const WORTH_A_THREAD = 20;
const MOST_THREADS = 8;
/** Documents in a share: few, so that at the end nobody waits long for another. */
const MOST_IN_A_SHARE = 8;

/** How many threads are worth having besides this one, which only deals out; 1 is none. */
export const threadsFor = (documents: number): number =>
  Math.max(1, Math.min(availableParallelism(), MOST_THREADS, Math.floor(documents / WORTH_A_THREAD)));

/** Text and path: a text may be one that is read only when it is looked at. */
const sentBy =
  (rules: readonly Rule[]) =>
  ({ path, text }: DocumentFile): Sent => ({ path, text, outcomes: outcomesOn(rules, path) });

function sharesOf(documents: readonly DocumentFile[], threads: number): readonly (readonly DocumentFile[])[] {
  const size = Math.max(1, Math.min(MOST_IN_A_SHARE, Math.floor(documents.length / (4 * threads))));
  return Array.from({ length: Math.ceil(documents.length / size) }, (_, index) =>
    documents.slice(index * size, (index + 1) * size),
  );
}

/** Everything but the documents; what they share goes with it. */
const frameOf = (files: RepositoryFiles): RepositoryFiles => ({
  ...files,
  documents: [],
  others: [...(files.others ?? []), ...files.documents.flatMap(({ outline }) => (outline ? [outline] : []))],
});

/**
 * What documents come to, in their order, each with its outline known. Many are dealt out in small shares to whoever is
 * free. What threads that cannot be had, or die, leave undone is inspected here.
 */
export async function inspectMany(
  files: RepositoryFiles,
  rules: readonly Rule[],
  options: InspectOptions,
  threads = threadsFor(files.documents.length),
): Promise<readonly Judged[]> {
  if (threads < 2 || !canBeSent(rules) || files.documents.some(({ outline }) => !outline))
    return inspectEach(files, rules, options);
  const frame: Frame = { files: frameOf(files), options, brought: broughtBy(rules) };
  const inspectOne = inspector(frame.files, rules, options);
  const shares = sharesOf(files.documents, threads);
  const found = new Array<readonly Judged[]>(shares.length);
  const left = [...shares.keys()];
  const there = async ({ ask }: Hand): Promise<void> => {
    for (let index = left.shift(); index !== undefined; index = left.shift()) {
      const answer = await ask((shares[index] as readonly DocumentFile[]).map(sentBy(rules)));
      if (!answer) return void left.unshift(index);
      found[index] = answer;
    }
  };
  const hands = Array.from({ length: threads }, () => hand(frame));
  try {
    // Each has a second share at hand, so that none is idle while its answer is on the way.
    await Promise.all(hands.flatMap((each) => [there(each), there(each)]));
  } finally {
    for (const { end } of hands) end();
  }
  for (const index of left) found[index] = (shares[index] as readonly DocumentFile[]).map(inspectOne);
  return found.flat();
}
