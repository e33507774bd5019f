import { type ChildProcess, spawn } from "node:child_process";
import { randomUUID } from "node:crypto";
import { ownFile } from "../own-file.js";
import type { Limits } from "./limits.js";
import { memoryText, timeText } from "./limits.js";
import type { PluginAnswer, PluginRequest } from "./messages.js";
import { Output } from "./output.js";

/** Milliseconds for the process itself to start, and to read each document, on a machine that has other work. */
const START = 60_000;
const FOR_EACH = 1000;
/** Megabytes of heap for the process itself, and for each document; the guard sees to what the plugin takes. */
const HEAP = 100;
const HEAP_FOR_EACH = 3;

/** Not bundled: a plugin and its process share one kit. */
const CHILD = ownFile("dist/plugins/child.js").href;

/** Imports are found as from the folder the process stands in: `import` of a text is resolved against it. */
const CODE = `import(${JSON.stringify(CHILD)}).then(({ start }) => start((target) => import(target)));`;

/**
 * The packages a plugin shares with its process, each as one file: hundreds of modules take longer to load than most
 * plugins to run. What is built has them.
 */
const ONE_FILE = "--conditions=one-file";

/** A package a plugin is made of is not installed. */
export class AbsentPackage extends Error {
  constructor(readonly absent: string) {
    super(`the package ${absent} is not installed`);
  }
}

/** One process of one plugin, ended as soon as it breaks a limit. */
export class PluginProcess {
  readonly #child: ChildProcess;
  readonly #token = randomUUID();
  readonly #output: Output;
  readonly #answers: PluginAnswer[] = [];
  #wake: (() => void) | undefined;
  #over: string | undefined;

  constructor(
    plugin: string,
    folder: string,
    private readonly limits: Limits,
    warn: (text: string) => void,
    private readonly documents: number,
  ) {
    const { NODE_OPTIONS: _, NODE_V8_COVERAGE: __, ...env } = process.env;
    const heap = Math.ceil(limits.memory / 1_000_000) + HEAP + HEAP_FOR_EACH * documents;
    const words = [`--max-old-space-size=${heap}`, ONE_FILE, "--input-type=module", "-e", CODE];
    this.#child = spawn(process.execPath, words, {
      cwd: folder,
      env,
      stdio: ["ignore", "pipe", "pipe", "ipc"],
    });
    this.#output = new Output(plugin, this.#token, warn);
    for (const stream of [this.#child.stdout, this.#child.stderr]) if (stream) this.#output.take(stream);
    this.#child.on("message", (answer) => this.#add(answer as PluginAnswer));
    this.#child.on("error", (error) => this.#end(`its process could not be started: ${error.message}`));
    // `close`, not `exit`: what it printed last says why it ended.
    this.#child.on("close", (code, signal) => this.#end(this.#reasonOf(code, signal)));
    this.#child.on("disconnect", () => this.#child.kill("SIGKILL"));
  }

  get token(): string {
    return this.#token;
  }

  ask(request: PluginRequest): void {
    if (this.#child.connected) this.#child.send(request, () => undefined);
  }

  /** The next answer. @throws Error with the reason when there is none within the time, or the process ends. */
  async next(milliseconds = this.limits.time * 1000): Promise<PluginAnswer> {
    const slow = setTimeout(() => {
      this.#over ??= `it did not finish within ${timeText(this.limits)}`;
      this.stop();
    }, milliseconds);
    while (this.#answers.length === 0 && this.#wake !== NONE) {
      await new Promise<void>((resolve) => {
        this.#wake = resolve;
      });
    }
    clearTimeout(slow);
    const answer = this.#answers.shift();
    if (!answer) throw new Error(this.#over);
    if (answer.answer === "broke")
      throw typeof answer.absent === "string" ? new AbsentPackage(answer.absent) : new Error(String(answer.reason));
    return answer;
  }

  /** The next answer, when it is no work of the plugin's: the process starts, or the documents are read. */
  started(): Promise<PluginAnswer> {
    return this.next(START + FOR_EACH * this.documents);
  }

  stop(): void {
    this.#child.kill("SIGKILL");
  }

  #add(answer: PluginAnswer): void {
    this.#answers.push(answer);
    this.#rouse();
  }

  #rouse(): void {
    const wake = this.#wake;
    if (wake && wake !== NONE) {
      this.#wake = undefined;
      wake();
    }
  }

  #end(reason: string): void {
    this.#over ??= reason;
    const wake = this.#wake;
    this.#wake = NONE;
    wake?.();
  }

  #reasonOf(code: number | null, signal: NodeJS.Signals | null): string {
    if (this.#output.outOfMemory) return `it took more than ${memoryText(this.limits)} of memory`;
    return `it ended its process (${signal ? `by ${signal}` : `with status ${code}`})`;
  }
}

/** Marks a process that is over: nothing more will come. */
const NONE = (): void => undefined;
