import { type ChildProcessWithoutNullStreams, spawn } from "node:child_process";
import { Trouble } from "../terminal/trouble.js";
import { notStarted } from "./not-started.js";
import { environment } from "./run.js";

const NEWLINE = 10;

interface Question {
  readonly count: number;
  readonly answered: (bytes: Buffer) => void;
  readonly failed: (error: Error) => void;
}

/** Where the item ends that begins at a place: a line, and as many bytes as it says; undefined without a whole line. */
function endOf(bytes: Buffer, from: number): number | undefined {
  const line = bytes.indexOf(NEWLINE, from);
  if (line < 0) return undefined;
  const size = / (\d+)$/u.exec(bytes.toString("latin1", from, line))?.[1];
  return size === undefined ? line + 1 : line + 1 + Number(size) + 1;
}

/** One `git cat-file --batch` for every question: it answers them in their order, and waits for more until its end. */
export class GitBatch {
  #child: ChildProcessWithoutNullStreams | undefined;
  #questions: Question[] = [];
  #bytes: Buffer[] = [];
  /** Of the item that is arriving: what there must be before it is worth looking. */
  #wanted = 0;
  #arrived = 0;
  #whole: Buffer[] = [];
  #items = 0;
  /** Why nothing is answered any more. */
  #ended: Error | undefined;

  constructor(private readonly folder: string) {}

  /** What git prints for these names, one after another. @throws Trouble when git ends before it has answered. */
  ask(ids: readonly string[]): Promise<Buffer> {
    this.#child ??= this.#begin();
    const { pid, stdin } = this.#child;
    if (this.#ended) return Promise.reject(this.#ended);
    return new Promise((answered, failed) => {
      this.#questions.push({ count: ids.length, answered, failed });
      if (pid !== undefined) stdin.write(`${ids.join("\n")}\n`);
    });
  }

  /** No more is asked. */
  end(): void {
    // What did not start need not have anything to write to.
    this.#child?.stdin?.end();
  }

  #begin(): ChildProcessWithoutNullStreams {
    const child = spawn("git", ["cat-file", "--batch"], { cwd: this.folder, env: environment() });
    const fail = (error: Error): void => {
      this.#ended ??= error;
      for (const { failed } of this.#questions.splice(0)) failed(error);
    };
    child.on("error", (error) => fail(notStarted(error, this.folder)));
    if (child.pid === undefined) return child;
    child.stdout.on("data", (bytes: Buffer) => this.#take(bytes));
    child.stdin.on("error", () => undefined);
    child.stderr.resume();
    child.on("close", (status) =>
      fail(
        new Trouble(
          `git cannot tell: \`git cat-file\` ended with ${status ?? "a signal"}.`,
          "Look at the git repository first.",
        ),
      ),
    );
    return child;
  }

  #take(bytes: Buffer): void {
    this.#bytes.push(bytes);
    this.#arrived += bytes.length;
    if (this.#arrived < this.#wanted) return;
    const all = Buffer.concat(this.#bytes);
    let at = 0;
    let end = endOf(all, at);
    for (; end !== undefined && end <= all.length; end = endOf(all, at)) {
      this.#whole.push(all.subarray(at, end));
      this.#items += 1;
      at = end;
      this.#answer();
    }
    const rest = all.subarray(at);
    // Small contents arrive many at a time, a large one in many pieces: it is not put together for each of them.
    [this.#bytes, this.#arrived, this.#wanted] = [[rest], rest.length, end === undefined ? 0 : end - at];
  }

  #answer(): void {
    const first = this.#questions[0];
    if (!first || this.#items < first.count) return;
    this.#questions.shift();
    const whole = Buffer.concat(this.#whole);
    [this.#whole, this.#items] = [[], 0];
    first.answered(whole);
  }
}
