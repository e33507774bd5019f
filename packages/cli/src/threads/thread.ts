import { parentPort } from "node:worker_threads";
import { inspector, type Judged, type RuleOutcome } from "@plumbmark/core";
import { rulesFrom } from "./brought.js";
import type { Answer, Frame, Share } from "./messages.js";

// A thread that inspects the documents it is sent, one share after another. A mistake of ours ends it, and whoever sent
// the share comes upon the same mistake there.

parentPort?.once("message", ({ files, options, brought }: Frame) => {
  const found = new Map<string, readonly RuleOutcome[]>();
  const inspectOne = inspector(files, rulesFrom(brought, found), options);
  parentPort?.on("message", (share: Share) => {
    for (const { path, outcomes } of share) found.set(path, outcomes);
    const answer: Answer = share.map(({ path, text }): Judged => inspectOne({ path, text }));
    // They are done with, and would only take room.
    found.clear();
    parentPort?.postMessage(answer);
  });
});
