import { CommanderError } from "commander";
import { commandLine } from "./command-line.js";
import { explained } from "./explained.js";
import type { Surroundings } from "./surroundings.js";

const CANNOT = 2;

/** Runs one command line (without the program's own name); gives the exit status and never throws. */
export async function main(words: readonly string[], around: Surroundings, version: string): Promise<number> {
  let status = 0;
  try {
    await commandLine(around, version, (given) => {
      status = given;
    }).parseAsync(words, { from: "user" });
    return status;
  } catch (error) {
    // Help and version end the parsing by an error, too; only their exit code tells that nothing is wrong.
    if (error instanceof CommanderError && error.exitCode === 0) return 0;
    around.warn(`plumbmark: ${explained(error, words)}\n`);
    return CANNOT;
  }
}
