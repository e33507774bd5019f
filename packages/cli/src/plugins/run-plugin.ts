import { areSound, type PluginResults, type RepositoryFiles, type RuleResult, type StatedRule } from "@plumbmark/core";
import { narrowed } from "../repository/narrowed.js";
import type { Limits } from "./limits.js";
import type { Job, PluginAnswer } from "./messages.js";
import { AbsentPackage, PluginProcess } from "./process.js";
import type { Target } from "./target.js";

/** What plugins are run with. */
export interface PluginRun {
  readonly folder: string;
  readonly limits: Limits;
  /** Ids of the rules there are besides: a plugin may not take their names. */
  readonly taken: readonly string[];
  readonly warn: (text: string) => void;
}

/** What they are run on. */
export interface PluginInput {
  readonly files: RepositoryFiles;
  readonly today: string;
  /** Documents that were asked for; the others are only read. */
  readonly wanted: readonly string[];
}

/** After a rule has brought its process down this often, it is not begun again. */
const OFTEN = 3;

const failedAs = (plugin: string, cause: unknown): PluginResults["failed"][number] => ({
  plugin,
  reason: reasonOf(cause),
  ...(cause instanceof AbsentPackage ? { absent: cause.absent } : {}),
});

const reasonOf = (cause: unknown): string => (cause instanceof Error ? cause.message : String(cause));

/** A plugin's process with the rules it has loaded. */
interface Loaded {
  readonly running: PluginProcess;
  readonly rules: readonly StatedRule[];
}

/** Starts a plugin's process and has it loaded. @throws Error with the reason */
async function loaded(target: Target, given: PluginRun, documents: number): Promise<Loaded> {
  const { name, address } = target;
  const running = new PluginProcess(name, given.folder, given.limits, given.warn, documents);
  try {
    await running.started();
    const { memory } = given.limits;
    running.ask({ ask: "load", plugin: name, target: address, memory, parent: process.pid, token: running.token });
    const answer = await running.next();
    if (answer.answer !== "loaded") throw new Error("it answered for itself while it was loaded");
    const taken = answer.rules.find(({ id }) => given.taken.includes(id));
    if (taken) throw new Error(`its rule ${taken.id} has the name of a rule there is already`);
    return { running, rules: answer.rules.map((rule) => ({ ...rule, plugin: name })) };
  } catch (cause) {
    running.stop();
    throw cause;
  }
}

type Found = Map<string, Map<string, RuleResult>>;
/** Paths of the documents whose content the results on each document rest on. */
type Dependencies = Map<string, readonly string[]>;

const put = (found: Found, { rule, file }: Job, outcome: RuleResult): void => {
  const documents = found.get(rule) ?? new Map<string, RuleResult>();
  documents.set(file, outcome);
  found.set(rule, documents);
};

const arePaths = (given: unknown): given is readonly string[] =>
  Array.isArray(given) && given.every((each) => typeof each === "string");

function outcomeOf(answer: PluginAnswer, index: number, { rule }: Job): RuleResult {
  if (answer.answer !== "done" || answer.job !== index || !arePaths(answer.dependencies))
    return { failed: "it answered for itself" };
  return areSound(answer.checks, [rule, "plugin.failed"])
    ? { checks: answer.checks }
    : { failed: "what came back from it are no checks" };
}

/** How far jobs went: all of them, unless there is a cause why not. */
interface Progress {
  readonly at: number;
  readonly cause?: unknown;
  /** Whether a rule looked at the builds of other documents. */
  readonly around: boolean;
}

/**
 * Runs jobs until they are done or the process is over; one that has done all of them can be given more.
 * @param isPart it has not been given every document: a rule that looks at others is stopped
 */
async function untilOver(
  running: PluginProcess,
  jobs: readonly Job[],
  found: Found,
  rested: Dependencies,
  isPart: boolean,
): Promise<Progress> {
  let [at, around] = [0, false];
  try {
    await running.started();
    for (; at < jobs.length; at += 1) {
      const answer = await running.next();
      around ||= answer.answer === "done" && answer.around;
      if (around && isPart) {
        running.stop();
        return { at, around };
      }
      const job = jobs[at] as Job;
      put(found, job, outcomeOf(answer, at, job));
      if (answer.answer === "done" && arePaths(answer.dependencies))
        rested.set(job.file, [...(rested.get(job.file) ?? []), ...answer.dependencies]);
    }
    return { at, around };
  } catch (cause) {
    running.stop();
    return { at, cause, around };
  }
}

/** What is left after a rule brought the process down: the others go on, and so does the rule unless it does so often. */
function remaining(
  jobs: readonly Job[],
  at: number,
  reason: string,
  downs: Map<string, number>,
  found: Found,
): readonly Job[] {
  const culprit = jobs[at] as Job;
  put(found, culprit, { failed: reason });
  const times = (downs.get(culprit.rule) ?? 0) + 1;
  downs.set(culprit.rule, times);
  const rest = jobs.slice(at + 1);
  if (times < OFTEN) return rest;
  for (const job of rest)
    if (job.rule === culprit.rule)
      put(found, job, { failed: `it was not begun again after ${times} documents, on the last of which ${reason}` });
  return rest.filter(({ rule }) => rule !== culprit.rule);
}

/** The results of a plugin. */
export interface PluginOutcome extends Pick<PluginResults, "rules" | "failed"> {
  /** Paths of the documents whose content the results on each document rest on; only of what ran this time. */
  readonly dependencies?: Readonly<Record<string, readonly string[]>>;
}

/** What a plugin found, and its process for as long as that can be given more. */
interface Run {
  readonly outcome: PluginOutcome;
  readonly still: Loaded | undefined;
}

/** @param begun a process that has the plugin loaded already */
async function runRules(
  target: Target,
  run: PluginRun,
  { files, today, wanted }: PluginInput,
  begun?: Loaded,
): Promise<Run> {
  const found: Found = new Map();
  const rested: Dependencies = new Map();
  const downs = new Map<string, number>();
  const asked = new Set(wanted);
  const paths = files.documents.map(({ path }) => path).filter((path) => asked.has(path));
  const first = begun ?? (await loaded(target, run, files.documents.length));
  const { rules } = first;
  let still: Loaded | undefined = first;
  let alone = rules.every(({ over }) => over === undefined);
  let jobs: readonly Job[] = paths.flatMap((file) => rules.map(({ id }) => ({ rule: id, file })));
  while (jobs.length > 0) {
    const now: Loaded = still ?? (await loaded(target, run, files.documents.length));
    const { running } = now;
    const isPart = alone && paths.length < files.documents.length;
    running.ask({ ask: "work", files: isPart ? narrowed(files, (path) => asked.has(path)) : files, today, jobs });
    const { at, cause, around } = await untilOver(running, jobs, found, rested, isPart);
    alone &&= !around;
    // What was stopped because it looked further is asked anew, with all there is to look at.
    jobs = cause === undefined ? jobs.slice(at) : remaining(jobs, at, reasonOf(cause), downs, found);
    still = cause === undefined && jobs.length === 0 ? now : undefined;
  }
  const outcomes = (id: string) => Object.fromEntries(found.get(id) ?? []);
  return {
    outcome: {
      rules: rules.map((stated) => ({ stated, outcomes: outcomes(stated.id) })),
      failed: [],
      dependencies: Object.fromEntries([...rested].map(([file, on]) => [file, [...new Set(on)]])),
    },
    still,
  };
}

/** Runs every rule of a plugin; whatever it does, it costs its own checks only. */
export const runPlugin = (target: Target, run: PluginRun, input: PluginInput): Promise<PluginOutcome> =>
  runPluginOnEach(target, run, [input]).then(([outcome]) => outcome as PluginOutcome);

/**
 * The same on several inputs that know nothing of one another, such as the options of a draft: one after another, in one
 * process for as long as that lasts. A plugin that cannot be loaded is not tried again.
 */
export async function runPluginOnEach(
  target: Target,
  run: PluginRun,
  inputs: readonly PluginInput[],
): Promise<readonly PluginOutcome[]> {
  const outcomes: PluginOutcome[] = [];
  let still: Loaded | undefined;
  for (const input of inputs)
    try {
      const ran = await runRules(target, run, input, still);
      still = ran.still;
      outcomes.push(ran.outcome);
    } catch (cause) {
      const failed = { rules: [], failed: [failedAs(target.name, cause)] };
      return [...outcomes, ...inputs.slice(outcomes.length).map(() => failed)];
    }
  still?.running.stop();
  return outcomes;
}

/** The rules of a plugin as they are stated, without running them. */
export const listPlugin = (target: Target, given: PluginRun): Promise<Pick<PluginResults, "rules" | "failed">> =>
  loaded(target, given, 0).then(
    ({ running, rules }) => {
      running.stop();
      return { rules: rules.map((stated) => ({ stated, outcomes: {} })), failed: [] };
    },
    (cause: unknown) => ({ rules: [], failed: [failedAs(target.name, cause)] }),
  );
