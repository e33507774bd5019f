import { readFileSync } from "node:fs";
import { ownFile } from "./own-file.js";
import type { Surroundings } from "./surroundings.js";

// What the one script of the command line can be started as. Each is loaded when it is started.

/** Carries out a command line; gives the exit status. */
export async function command(words: readonly string[], around?: Surroundings): Promise<number> {
  const { version } = JSON.parse(readFileSync(ownFile("package.json"), "utf8")) as { version: string };
  const [{ main }, { ofProcess }] = await Promise.all([import("./main.js"), import("./surroundings.js")]);
  return main(words, around ?? ofProcess(), version);
}

export const thread = (): Promise<unknown> => import("./threads/thread.js");
