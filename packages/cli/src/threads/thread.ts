import { parentPort } from "node:worker_threads";
import { inspectEach } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import type { Answer, Share } from "./messages.js";

// A thread that inspects the documents it is sent, one share after another.

const answer = (what: Answer): void => parentPort?.postMessage(what);

parentPort?.on("message", ({ files, options }: Share) => {
  try {
    answer({ judged: inspectEach(files, rules, options) });
  } catch (cause) {
    const { message, name, stack = "" } = cause instanceof Error ? cause : new Error(String(cause));
    answer({ failed: message, name, stack });
  }
});
