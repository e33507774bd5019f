import { resolve } from "node:path";
import { starterRepository } from "@plumbmark/starter";
import { copyStarter } from "../starting/copy-starter.js";
import type { CommandContext } from "../terminal/context.js";
import { Trouble } from "../terminal/trouble.js";
import { startRuleCommand } from "./start-rule.js";

/** Makes a new docs repository from the starter, or a new rule in the one it is given in; gives the exit status. */
export async function startCommand(folder: string, name: string | undefined, context: CommandContext): Promise<number> {
  if (folder === "rule") {
    if (name !== undefined) return startRuleCommand(name, context);
    throw new Trouble(
      "The new rule has no name.",
      "Write `plumbmark start rule NAME`; for a docs repository in a folder called rule, write `plumbmark start ./rule`.",
    );
  }
  if (name !== undefined)
    throw new Trouble(
      `\`${name}\` is one word too many.`,
      "Write `plumbmark start FOLDER` or `plumbmark start rule NAME`.",
    );
  await copyStarter(starterRepository, resolve(context.folder, folder), context.folder);
  context.print(`${folder} is a docs repository now. Its builds are invented examples; one of them is not ready, to show what that looks like.

  plumbmark inspect ${folder}

Then change house-standard.yaml, parts/ and stock.yaml to what your own shop has, and put your documents into builds/.
`);
  return 0;
}
