import {
  type DocumentFile,
  type InspectOptions,
  inspectEach,
  inspector,
  type Judged,
  type RepositoryFiles,
  type Rule,
} from "@plumbmark/core";
import { broughtBy, canBeSent } from "./brought.js";
import { deal, sharesOf, threadsFor } from "./deal.js";
import { sameSources } from "./same-sources.js";
import { sending } from "./sending.js";

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
  const frame = frameOf(files);
  // A house standard that cannot be used is told before anything is begun.
  const inspectOne = inspector(frame, rules, options);
  // A commit of a few documents is judged without threads, and without loading what makes them.
  const { dismiss, hire } = await import("./crew.js");
  const crew = hire(threads, files.documents.length);
  const order = { work: "documents", frame: { files: frame, options, brought: broughtBy(rules) } } as const;
  const here = () => (share: readonly DocumentFile[]) => share.map((file): Judged => inspectOne(file));
  try {
    const same = sameSources();
    const asks = sending(crew, order, rules).map(
      (ask) => async (share: readonly DocumentFile[]) => (await ask(share))?.map(same),
    );
    return (await deal(sharesOf(files.documents, threads), asks, here)).flat();
  } finally {
    await dismiss(crew);
  }
}
