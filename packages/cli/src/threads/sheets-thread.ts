import { parentPort } from "node:worker_threads";
import type { RuleOutcome } from "@plumbmark/core";
import { rulesFrom } from "./brought.js";
import type { Share } from "./messages.js";
import { sheetWriter } from "./sheets.js";
import type { SheetsFrame } from "./sheets-many.js";

// A thread that makes the sheets of the documents it is sent, one share after another. A mistake of ours, or of the disk,
// ends it, and whoever sent the share comes upon the same there.

parentPort?.once("message", ({ brought, ...sheets }: SheetsFrame) => {
  const found = new Map<string, readonly RuleOutcome[]>();
  const write = sheetWriter({ ...sheets, rules: rulesFrom(brought, found) });
  parentPort?.on("message", (share: Share) => {
    for (const { path, outcomes } of share) found.set(path, outcomes);
    parentPort?.postMessage(share.map(({ path, text }) => write({ path, text })));
    found.clear();
  });
});
