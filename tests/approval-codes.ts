import { openRepository, type RepositoryFiles } from "@plumbmark/core";

/** The code of each document's content, by its path; documents whose front matter cannot be read have none. */
export function approvalCodes(files: RepositoryFiles, today: string): ReadonlyMap<string, string> {
  const repository = openRepository(files, [], { today });
  return new Map(
    repository.documents.flatMap((path) => {
      const { code } = repository.model(path).build.approval;
      return code === undefined ? [] : [[path, code] as const];
    }),
  );
}
