import { readFileSync } from "node:fs";
import type { OpenRepository, RepositoryFiles } from "@plumbmark/core";
import { parse } from "yaml";
import { approvedAsTheyAre, starter } from "../documents/repository.js";
import { opened } from "./deletions.js";

/** A copy of a build of the starter with one mistake in it. */
export interface Refused {
  readonly mistake: string;
  readonly build: string;
  readonly was: string;
  readonly becomes: string;
  /** The rule that says so; empty where several do. */
  readonly rule: string;
  /** Places that bear the mistake: without them the copy may be ready. */
  readonly bears?: readonly string[];
}

export const REFUSED = parse(readFileSync(new URL("refused.yaml", import.meta.url), "utf8")) as readonly Refused[];

let shared: OpenRepository | undefined;
let replaced: string | undefined;

/**
 * The starter with one copy in the place of its build, approved as it is: the mistake is another. All copies are put into
 * one repository after another: of two that are looked at together the first is no longer there.
 */
export function withMistake({ build, was, becomes, mistake }: Refused): {
  readonly repository: OpenRepository;
  readonly document: string;
} {
  const document = `builds/${build}.md`;
  const files = starter();
  const text = files.documents.find(({ path }) => path === document)?.text ?? "";
  if (!text.includes(was)) throw new Error(`${document} has no ${was}, so nothing is ${mistake}`);
  const documents = files.documents.map((each) =>
    each.path === document ? { path: document, text: text.replace(was, () => becomes) } : each,
  );
  shared ??= opened();
  const textOf = (all: RepositoryFiles["documents"], path: string) => all.find((each) => each.path === path)?.text;
  if (replaced !== undefined) shared.replace(replaced, textOf(files.documents, replaced));
  shared.replace(document, textOf(approvedAsTheyAre({ ...files, documents }).documents, document));
  replaced = document;
  return { repository: shared, document };
}
