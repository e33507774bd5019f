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
import { deal, sharesOf, threadsFor } from "./deal.js";
import { type Hand, hand } from "./hand.js";
import type { Answer, Frame, Sent, Share } from "./messages.js";

/** Text and path: a text may be one that is read only when it is looked at. */
const sentBy =
  (rules: readonly Rule[]) =>
  ({ path, text }: DocumentFile): Sent => ({ path, text, outcomes: outcomesOn(rules, path) });

/** Has a thread take documents: each is read, and what plugins came to on it looked up, when it is sent. */
export const taking = <A>({ ask, end }: Hand<Share, A>, rules: readonly Rule[]): Hand<readonly DocumentFile[], A> => ({
  ask: (documents) => ask(documents.map(sentBy(rules))),
  end,
});

/** Everything but the documents; what they share goes with it. */
export const frameOf = (files: RepositoryFiles): RepositoryFiles => ({
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
  if (threads === 0 || !canBeSent(rules) || files.documents.some(({ outline }) => !outline))
    return inspectEach(files, rules, options);
  const frame: Frame = { files: frameOf(files), options, brought: broughtBy(rules) };
  // A house standard that cannot be used is told before anything is begun.
  const inspectOne = inspector(frame.files, rules, options);
  const hands = Array.from({ length: threads }, () => taking(hand<Share, Answer>("thread.js", frame), rules));
  const here = () => (share: readonly DocumentFile[]) => share.map((file): Judged => inspectOne(file));
  const found = await deal(sharesOf(files.documents, threads), hands, here);
  return found.flat();
}
