import { Worker } from "node:worker_threads";
import { type OpenRepository, openRepository, type Rule, Trace } from "@plumbmark/core";
import type { PluginAnswer, PluginRequest } from "./messages.js";
import { rulesOf, statedOf } from "./module.js";
import { offerOwnPackages } from "./own-packages.js";

// The process of one plugin. It reads the same texts as the inspection and makes models of its own, so that nothing a
// plugin does to them reaches the inspection; what comes back is plain data.

type Load = Extract<PluginRequest, { ask: "load" }>;
type Work = Extract<PluginRequest, { ask: "work" }>;

const post = process.send?.bind(process);

/** Each answer is on its way before the plugin goes on: one that never ends must not take back what is done. */
const answer = (what: PluginAnswer): Promise<void> =>
  new Promise((resolve) => {
    post?.(what, undefined, undefined, () => resolve());
  });

const reasonOf = (cause: unknown): string =>
  (cause instanceof Error ? cause.message || cause.name : String(cause)).slice(0, 500);

/** The package that is not installed, where that is the cause: as Node.js names it, whoever imports it. */
const absentOf = (cause: unknown): string | undefined =>
  cause instanceof Error && (cause as NodeJS.ErrnoException).code === "ERR_MODULE_NOT_FOUND"
    ? /^Cannot find package '((?:@[\w.~-]+\/)?[\w.~-]+)'/u.exec(cause.message)?.[1]
    : undefined;

async function broke(cause: unknown): Promise<void> {
  const absent = absentOf(cause);
  await answer({ answer: "broke", reason: reasonOf(cause), ...(absent === undefined ? {} : { absent }) });
  process.exit(1);
}

/** Has the guard heed another limit: what the process may have in all, in bytes. */
let heed: (most: number) => Promise<unknown> = () => Promise.resolve();
let allowed = 0;

async function watch({ memory, parent, token }: Load): Promise<void> {
  const most = process.memoryUsage.rss() + memory;
  const guard = new Worker(new URL("./guard.js", import.meta.url), {
    execArgv: [],
    workerData: { most, parent, token },
  });
  guard.unref();
  allowed = memory;
  heed = (next) =>
    new Promise((resolve) => {
      guard.once("message", resolve);
      guard.postMessage(next);
    });
  await new Promise((resolve) => guard.once("online", resolve));
}

let rules: ReadonlyMap<string, Rule> = new Map();

async function load(request: Load, bring: (target: string) => Promise<unknown>): Promise<void> {
  await watch(request);
  const loaded = (await bring(request.target)) as Readonly<Record<string, unknown>>;
  const brought = rulesOf(loaded, request.plugin);
  rules = new Map(brought.map((rule) => [rule.id, rule]));
  await answer({ answer: "loaded", rules: brought.map(statedOf) });
}

/**
 * Runs rules one after another, and tells of each the documents whose content its checks depend on. What a rule saw of
 * other documents its plugin may have remembered, so it counts for every later run, too.
 */
function runnerOf(repository: OpenRepository) {
  const others = new Set<string>();
  let around = false;
  return (rule: Rule, file: string) => {
    const trace = new Trace();
    const checks = repository.run(rule, file, trace);
    around ||= trace.otherBuilds;
    for (const path of trace.contents) if (path !== file || rule.over !== undefined) others.add(path);
    // Where it stands, and its words, are read from the document a check is about.
    const own = trace.contents.has(file) || checks.length > 0 ? [file] : [];
    return { checks, around, dependencies: [...new Set([...others, ...own])] };
  };
}

/** What was worked on last: options of a draft are the same docs repository with another document in it. */
let last: { readonly beside: string; readonly repository: OpenRepository } | undefined;

const without = ({ documents: _, ...files }: Work["files"], today: string): string => JSON.stringify([files, today]);

/** The docs repository, of the one before where only documents are others. Frozen: a rule that changes it fails itself. */
function opened({ files, today }: Work): OpenRepository {
  const beside = without(files, today);
  if (last?.beside !== beside) {
    last = { beside, repository: openRepository(files, [], { today, frozen: true, keep: "models", prose: true }) };
    return last.repository;
  }
  const { repository } = last;
  const wanted = new Map(files.documents.map(({ path, text }) => [path, text]));
  for (const { path, text } of repository.files.documents)
    if (wanted.get(path) !== text) repository.replace(path, wanted.get(path));
  const there = new Set(repository.documents);
  for (const [path, text] of wanted) if (!there.has(path)) repository.replace(path, text, "document");
  return repository;
}

async function work(asked: Work): Promise<void> {
  const { jobs } = asked;
  // What the documents themselves take, in time and memory, is not the plugin's.
  await heed(Number.MAX_SAFE_INTEGER);
  const repository = opened(asked);
  const run = runnerOf(repository);
  if ([...rules.values()].some(({ over }) => over === "repository")) repository.readAll();
  await heed(process.memoryUsage.rss() + allowed);
  await answer({ answer: "begun" });
  for (const [job, { rule, file }] of jobs.entries()) {
    await answer({ answer: "done", job, ...run(rules.get(rule) as Rule, file) });
    // Documents come one after the other: a model that is done with only takes room.
    if (jobs[job + 1]?.file !== file) repository.release(file);
  }
}

/** Begins to listen. `bring` imports a module as from the folder of the house standard. */
export async function start(bring: (target: string) => Promise<unknown>): Promise<void> {
  offerOwnPackages();
  process.on("uncaughtException", (cause) => void broke(cause));
  process.on("unhandledRejection", (cause) => void broke(cause));
  process.on("disconnect", () => process.exit(1));
  // The plugin is not to answer for itself.
  Object.defineProperty(process, "send", { value: undefined });
  process.on("message", (request: PluginRequest) => {
    void (request.ask === "load" ? load(request, bring) : work(request)).catch(broke);
  });
  await answer({ answer: "ready" });
}
