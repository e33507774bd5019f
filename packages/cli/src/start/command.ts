#!/usr/bin/env node
import { answerAt, placeOf } from "../answers/answers.js";
import { ofProcess, printer } from "../surroundings.js";
import { Trouble } from "../trouble.js";
import { load } from "./script.js";

// A reader that has seen enough (a pager, `head`) closes the pipe; that is no fault of the inspection.
for (const stream of [process.stdout, process.stderr]) {
  stream.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code === "EPIPE") return;
    // What was asked for did not arrive, whatever it came to.
    process.stderr.write(`plumbmark: The output cannot be written (${error.code}).\nMake room where it goes to.\n`);
    process.exit(2);
  });
}

// A file that grows over the limit of the shell would end the process without a word; so the write fails instead.
process.on("SIGXFSZ", () => undefined);

const words = process.argv.slice(2);

/** What was found before and is still so is printed again, without even loading what would find it. */
function again(): number | undefined {
  try {
    const around = ofProcess();
    const answer = words[0] === "inspect" ? answerAt(placeOf(words, around)) : undefined;
    if (!answer) return undefined;
    for (const text of answer.warned) around.warn(text);
    printer(process.stdout)(answer.printed);
    return answer.status;
  } catch (error) {
    if (!(error instanceof Trouble)) throw error;
    process.stderr.write(`plumbmark: ${error.says}\n${error.mend}\n`);
    return 2;
  }
}

// The status is set, not forced: forcing it would cut off output still on its way.
process.exitCode = again() ?? (await load().program.command(words));
