#!/usr/bin/env node
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

// The status is set, not forced: forcing it would cut off output still on its way.
const words = process.argv.slice(2);
process.exitCode = await load(words).program.command(words);
