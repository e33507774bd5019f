import { surveyKind } from "@plumbmark/core";
import type { Tree } from "../source/source.js";
import { type ReadFiles, readFiles } from "./read-files.js";

/** Surveys among the files of some patterns: what else lies there is prose about a venue. */
export async function readSurveyFiles(tree: Tree, patterns: readonly string[]): Promise<ReadFiles> {
  const { files, unreadable } = await readFiles(tree, await tree.find(patterns));
  return { files: files.filter(({ text }) => surveyKind(text) !== "other"), unreadable };
}
