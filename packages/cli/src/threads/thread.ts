import { parentPort } from "node:worker_threads";
import { inspector, type Judged } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import type { Answer, Frame, Share } from "./messages.js";

// A thread that inspects the documents it is sent, one share after another. A mistake of ours ends it, and whoever sent
// the share comes upon the same mistake there.

parentPort?.once("message", ({ files, options }: Frame) => {
  const inspectOne = inspector(files, rules, options);
  parentPort?.on("message", (share: Share) => {
    const answer: Answer = share.map((file): Judged => inspectOne(file));
    parentPort?.postMessage(answer);
  });
});
