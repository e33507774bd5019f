import { parentPort } from "node:worker_threads";
import { openRepository, outlineOf, type RuleResult } from "@plumbmark/core";
import { plainResult } from "./inspect-many.js";
import { rulesWith } from "./plugin-results.js";
import type { Batch, Message, WorkerTask } from "./protocol.js";
import { usesReader } from "./read-uses.js";

// A thread that does its task with the documents it is sent, one batch after another. A mistake of ours, or of the disk,
// ends it, and whoever sent the batch comes upon the same there.

type Work = (batch: Batch) => unknown;

/** The results of plugins on the documents of a batch; they are done with after it, and would only take room. */
function withResults(work: (found: ReadonlyMap<string, readonly RuleResult[]>) => Work): Work {
  const found = new Map<string, readonly RuleResult[]>();
  const run = work(found);
  return (batch) => {
    for (const { path, results } of batch) found.set(path, results);
    const result = run(batch);
    found.clear();
    return result;
  };
}

/** Gets ready for batches; what only sheets need is loaded for sheets. */
async function workOf(task: WorkerTask): Promise<Work> {
  if (task.work === "outlines") return (batch) => batch.map(outlineOf);
  if (task.work === "uses") {
    const usesOf = usesReader(task.context.files, task.context.options);
    return (batch) => batch.map(({ path, text }) => usesOf({ path, text }));
  }
  if (task.work === "documents") {
    const { files, options, plugins } = task.context;
    return withResults((found) => {
      const repository = openRepository(files, rulesWith(plugins, found), { ...options, keep: "nothing" });
      return (batch) => batch.map(({ path, text }) => plainResult(repository.one({ path, text })));
    });
  }
  const { sheetWriter } = await import("../sheet-writer.js");
  const { plugins, ...input } = task.context;
  return withResults((found) => {
    const write = sheetWriter({ ...input, rules: rulesWith(plugins, found) });
    return (batch) => batch.map(({ path, text }) => write({ path, text }));
  });
}

const isTask = (message: Message): message is WorkerTask => "work" in message;

let work: Promise<Work>;
parentPort?.on("message", async (message: Message) => {
  if (isTask(message)) work = workOf(message);
  else parentPort?.postMessage((await work)(message));
});
