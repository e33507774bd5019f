import type { RepositoryFiles } from "@plumbmark/core";
import { fromRoot } from "../source/paths.js";
import type { CommandContext } from "../terminal/context.js";
import { Trouble } from "../terminal/trouble.js";
import { NOT_A_BUILD } from "./build-document.js";
import { readRepository } from "./read-repository.js";

/** The docs repository around one build document, and the document's path in it. */
export async function openDocument(
  file: string,
  standard: string | undefined,
  around: CommandContext,
): Promise<{ readonly files: RepositoryFiles; readonly document: string }> {
  const { root, files, unreadable, asked } = await readRepository({
    folder: around.folder,
    paths: [file],
    standard,
    today: around.today,
  });
  if (asked[0]?.folder) throw new Trouble(`\`${file}\` is a folder.`, "Name one build document.");
  const document = fromRoot(root, asked[0]?.path as string);
  const problem = unreadable.find((each) => each.path === document);
  if (problem) throw new Trouble(`${file}: ${problem.says}`, problem.mend);
  if (!files.documents.some((each) => each.path === document))
    throw new Trouble(`${file} is not a build document.`, NOT_A_BUILD);
  return { files, document };
}
