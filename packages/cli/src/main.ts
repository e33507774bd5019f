import { CommanderError } from "commander";
import { commandLine } from "./command-line.js";
import type { CommandContext } from "./terminal/context.js";
import { explained } from "./terminal/explain.js";
import { withSafeOutput } from "./terminal/safe-text.js";

const CANNOT = 2;

/** Runs one command line (without the program's own name); gives the exit status and never throws. */
export async function main(words: readonly string[], given: CommandContext, version: string): Promise<number> {
  const context = withSafeOutput(given);
  let status = 0;
  try {
    await commandLine(context, version, (came) => {
      status = came;
    }).parseAsync(words, { from: "user" });
    return status;
  } catch (error) {
    // Help and version end the parsing by an error, too; only their exit code tells that nothing is wrong.
    if (error instanceof CommanderError && error.exitCode === 0) return 0;
    context.warn(`plumbmark: ${explained(error, words)}\n`);
    return CANNOT;
  }
}
