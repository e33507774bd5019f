import { choices, openRepository, workedValues } from "@plumbmark/core";
import { json } from "../report/form.js";
import { type Workings, workingsText } from "../report/workings-text.js";
import { openDocument } from "../repository/open-document.js";
import type { CommandContext } from "../terminal/context.js";
import { Trouble } from "../terminal/trouble.js";

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
  context: CommandContext,
): Promise<number> {
  const { files, document } = await openDocument(file, options.standard, context);
  const all = workedValues(openRepository(files, [], { today: context.today }).model(document));
  if (all.size === 0)
    throw new Trouble(`Nothing can be computed from ${file}.`, `Run \`plumbmark inspect ${file}\` to see why.`);
  const wanted = at(all, path);
  if (options.as === "json") context.print(json(Object.fromEntries(wanted)), "json");
  else context.print(workingsText(wanted, context), "report");
  return 0;
}
