import type { Readable } from "node:stream";

/** More than this of what a plugin prints helps nobody. */
const MOST = 16_384;

/** What a plugin's process prints, line by line; nothing of it reaches the record. */
export class Output {
  #rest = "";
  #shown = 0;
  #all = "";

  constructor(
    private readonly name: string,
    private readonly token: string,
    private readonly warn: (text: string) => void,
  ) {}

  take(stream: Readable): void {
    stream.setEncoding("utf8");
    stream.on("data", (text: string) => this.#add(text));
    stream.on("error", () => undefined);
  }

  /** Whether the guard ended the process, or the engine did, for want of memory. */
  get outOfMemory(): boolean {
    return this.#all.includes(`${this.token} memory`) || /heap out of memory|Allocation failed/u.test(this.#all);
  }

  /** Forgets what was printed: another process begins. */
  reset(): void {
    this.#all = "";
    this.#rest = "";
  }

  #add(text: string): void {
    this.#all = (this.#all + text).slice(-MOST);
    const lines = (this.#rest + text).split("\n");
    this.#rest = (lines.pop() ?? "").slice(-MOST);
    for (const line of lines) this.#show(line);
  }

  /** The engine's own account of its end is no word of the plugin. */
  #show(line: string): void {
    if (line.trim() === "" || line.includes(this.token) || this.outOfMemory || this.#shown > MOST) return;
    this.#shown += line.length;
    this.warn(this.#shown > MOST ? `${this.name}: (and more)\n` : `${this.name}: ${line}\n`);
  }
}
