import { resolve } from "node:path";
import { starterRepository } from "@plumbmark/starter";
import { copyStarter } from "../files/copy-starter.js";
import type { Surroundings } from "../surroundings.js";

/** Makes a new docs repository from the starter; gives the exit status. */
export async function startCommand(folder: string, around: Surroundings): Promise<number> {
  await copyStarter(starterRepository, resolve(around.folder, folder));
  around.print(`${folder} is a docs repository now. Its builds are invented examples; one of them is not ready, to show what that looks like.

  plumbmark inspect ${folder}

Then change house-standard.yaml, parts/ and stock.yaml to what your own shop has, and put your documents into builds/.
`);
  return 0;
}
