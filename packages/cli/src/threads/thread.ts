import { parentPort } from "node:worker_threads";
import { inspector, outlineOf, type RuleResult } from "@plumbmark/core";
import { rulesFrom } from "./brought.js";
import type { Message, Order, Share } from "./messages.js";

// A thread that does with the documents it is sent, one share after another, what it was told last. A mistake of ours, or
// of the disk, ends it, and whoever sent the share comes upon the same there.

type Work = (share: Share) => unknown;

/** What plugins came to on the documents of a share; they are done with after it, and would only take room. */
function withOutcomes(work: (found: ReadonlyMap<string, readonly RuleResult[]>) => Work): Work {
  const found = new Map<string, readonly RuleResult[]>();
  const worked = work(found);
  return (share) => {
    for (const { path, outcomes } of share) found.set(path, outcomes);
    const answer = worked(share);
    found.clear();
    return answer;
  };
}

/** Gets ready for shares; what only sheets need is loaded for sheets. */
async function readyFor(order: Order): Promise<Work> {
  if (order.work === "outlines") return (share) => share.map(outlineOf);
  if (order.work === "documents") {
    const { files, options, brought } = order.frame;
    return withOutcomes((found) => {
      const inspectOne = inspector(files, rulesFrom(brought, found), options);
      return (share) => share.map(({ path, text }) => inspectOne({ path, text }));
    });
  }
  const { sheetWriter } = await import("./sheets.js");
  const { brought, ...sheets } = order.frame;
  return withOutcomes((found) => {
    const write = sheetWriter({ ...sheets, rules: rulesFrom(brought, found) });
    return (share) => share.map(({ path, text }) => write({ path, text }));
  });
}

const isOrder = (message: Message): message is Order => "work" in message;

let work: Promise<Work>;
parentPort?.on("message", async (message: Message) => {
  if (isOrder(message)) work = readyFor(message);
  else parentPort?.postMessage((await work)(message));
});
