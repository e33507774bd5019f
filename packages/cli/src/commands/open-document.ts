import type { RepositoryFiles } from "@plumbmark/core";
import { NOT_A_BUILD } from "../files/build-document.js";
import { fromRoot } from "../files/find-files.js";
import { openRepository } from "../files/repository.js";
import type { Surroundings } from "../surroundings.js";
import { Trouble } from "../trouble.js";

/** The docs repository around one build document, and the document's path in it. */
export async function openDocument(
  file: string,
  standard: string | undefined,
  around: Surroundings,
): Promise<{ readonly files: RepositoryFiles; readonly document: string }> {
  const { root, files, unreadable, asked } = await openRepository({
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
