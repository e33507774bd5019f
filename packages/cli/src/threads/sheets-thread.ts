import { parentPort } from "node:worker_threads";
import { rules } from "@plumbmark/rules";
import { makeSheets, type Sheets } from "./sheets.js";
import type { SheetsAnswer } from "./sheets-many.js";

// A thread that makes the sheets of the documents it is sent.

const answer = (what: SheetsAnswer): void => parentPort?.postMessage(what);

parentPort?.on("message", (sheets: Omit<Sheets, "rules">) => {
  try {
    answer({ made: makeSheets({ ...sheets, rules }, () => answer("file")) });
  } catch (cause) {
    const error: NodeJS.ErrnoException = cause instanceof Error ? cause : new Error(String(cause));
    answer({ failed: error.message, name: error.name, stack: error.stack ?? "", code: error.code });
  }
});
