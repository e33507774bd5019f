import { readFileSync } from "node:fs";
import { ownFile } from "./own-file.js";
import type { CommandContext } from "./terminal/context.js";

// What the one script of the command line can be started as. Each is loaded when it is started.

/** Runs a command line; gives the exit status. */
export async function command(words: readonly string[], given?: CommandContext): Promise<number> {
  const { version } = JSON.parse(readFileSync(ownFile("package.json"), "utf8")) as { version: string };
  const [{ main }, { processContext }] = await Promise.all([import("./main.js"), import("./terminal/context.js")]);
  try {
    return await main(words, given ?? processContext(), version);
  } catch (error) {
    // There is no context to tell it by when the folder the command was given in is gone.
    const { explained } = await import("./terminal/explain.js");
    process.stderr.write(`plumbmark: ${explained(error, words)}\n`);
    return 2;
  }
}

export const thread = (): Promise<unknown> => import("./engine/workers/worker.js");
