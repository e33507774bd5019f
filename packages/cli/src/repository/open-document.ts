import type { RepositoryFiles } from "@plumbmark/core";
import { fromRoot } from "../source/paths.js";
import type { CommandContext } from "../terminal/context.js";
import { Trouble } from "../terminal/trouble.js";
import { NOT_A_BUILD } from "./build-document.js";
import { readRepository } from "./read-repository.js";

/** The docs repository around some build documents, and their paths in it, in the order they were named. */
export async function openDocuments(
  named: readonly string[],
  standard: string | undefined,
  around: CommandContext,
): Promise<{ readonly files: RepositoryFiles; readonly documents: readonly string[] }> {
  const { root, files, unreadable, asked } = await readRepository({
    folder: around.folder,
    paths: named,
    standard,
    today: around.today,
  });
  const documents = asked.map(({ folder, path, written }) => {
    if (folder) throw new Trouble(`\`${written}\` is a folder.`, "Name one build document.");
    const document = fromRoot(root, path);
    const problem = unreadable.find((each) => each.path === document);
    if (problem) throw new Trouble(`${written}: ${problem.says}`, problem.mend);
    if (!files.documents.some((each) => each.path === document))
      throw new Trouble(`${written} is not a build document.`, NOT_A_BUILD);
    return document;
  });
  return { files, documents: [...new Set(documents)] };
}

/** The docs repository around one build document, and the document's path in it. */
export async function openDocument(
  file: string,
  standard: string | undefined,
  around: CommandContext,
): Promise<{ readonly files: RepositoryFiles; readonly document: string }> {
  const { files, documents } = await openDocuments([file], standard, around);
  return { files, document: documents[0] as string };
}
