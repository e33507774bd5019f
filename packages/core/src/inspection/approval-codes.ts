import type { RepositoryFiles } from "../repository/files.js";
import { readDocument } from "../repository/outline.js";
import { contextFrom, knownOutline } from "./context.js";
import { buildOf } from "./models.js";

/**
 * The code of each document's content, by its path; documents whose front matter cannot be read have none. No rule is
 * asked. @throws StandardError when the house standard cannot be used.
 */
export function approvalCodes(files: RepositoryFiles, today: string): ReadonlyMap<string, string> {
  const context = contextFrom(files, files.documents.map(knownOutline), today);
  return new Map(
    files.documents.flatMap((file) => {
      const { code } = buildOf(readDocument(file), context).build.approval;
      return code === undefined ? [] : [[file.path, code] as const];
    }),
  );
}
