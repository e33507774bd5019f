import { parentPort } from "node:worker_threads";
import { rulesFrom } from "./brought.js";
import { makeSheets } from "./sheets.js";
import type { SentSheets, SheetsAnswer } from "./sheets-many.js";

// A thread that makes the sheets of the documents it is sent.

const answer = (what: SheetsAnswer): void => parentPort?.postMessage(what);

parentPort?.on("message", ({ brought, found, ...sheets }: SentSheets) => {
  try {
    answer({ made: makeSheets({ ...sheets, rules: rulesFrom(brought, found) }, () => answer("file")) });
  } catch (cause) {
    const error: NodeJS.ErrnoException = cause instanceof Error ? cause : new Error(String(cause));
    answer({ failed: error.message, name: error.name, stack: error.stack ?? "", code: error.code });
  }
});
