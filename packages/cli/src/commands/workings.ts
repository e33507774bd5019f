import { choices, workings } from "@plumbmark/core";
import { NOT_A_BUILD } from "../files/build-document.js";
import { fromRoot } from "../files/find-files.js";
import { json } from "../report/form.js";
import { type Workings, workingsText } from "../report/workings-text.js";
import type { Surroundings } from "../surroundings.js";
import { Trouble } from "../trouble.js";
import { open } from "./open.js";

export interface WorkingsOptions {
  readonly as: "text" | "json";
  readonly standard?: string;
}

/** The values at a path and below it. */
function at(all: Workings, path: string | undefined): Workings {
  if (path === undefined) return all;
  const found = new Map([...all].filter(([each]) => each === path || each.startsWith(`${path}.`)));
  if (found.size === 0) throw new Trouble(`Nothing is computed at \`${path}\`.`, choices([...all.keys()], path));
  return found;
}

/** Prints the computed values of one document with their workings; gives the exit status. */
export async function workingsCommand(
  file: string,
  path: string | undefined,
  options: WorkingsOptions,
  around: Surroundings,
): Promise<number> {
  const { root, files, unreadable, asked } = await open({
    folder: around.folder,
    paths: [file],
    standard: options.standard,
  });
  if (asked[0]?.folder) throw new Trouble(`\`${file}\` is a folder.`, "Name one build document.");
  const document = fromRoot(root, asked[0]?.path as string);
  const problem = unreadable.find((each) => each.path === document);
  if (problem) throw new Trouble(`${file}: ${problem.says}`, problem.mend);
  if (!files.documents.some((each) => each.path === document))
    throw new Trouble(`${file} is not a build document.`, NOT_A_BUILD);
  const all = workings(files, document, around.today);
  if (all.size === 0)
    throw new Trouble(`Nothing can be computed from ${file}.`, `Run \`plumbmark inspect ${file}\` to see why.`);
  const wanted = at(all, path);
  around.print(options.as === "json" ? json(Object.fromEntries(wanted)) : workingsText(wanted, around));
  return 0;
}
