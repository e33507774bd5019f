import { createHash } from "node:crypto";
import { constants, readdirSync, rmSync, statSync, writeSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { isRunning, writeInPlace } from "@plumbmark/in-place";
import { readOwnFile, withOwnFile } from "./own-file-access.js";

/** More bytes than this are not kept in a file: inspecting is then cheaper than reading what was kept. */
const LARGEST = 128_000_000;
/** Files of other editions of Plumbmark that are left beside this one's. */
const EDITIONS = 3;
/** Longer texts are read again when they are asked for again. */
const SHORT = 4000;

const NEWLINE = 10;
const SPACE = 32;
/** Letters of the check of a line. */
const CHECK = 32;

const NONE = Buffer.alloc(0);

type Span = readonly [from: number, to: number];

/** Where what follows the key stands in each line; the key is what stands before its first blank. The last one counts. */
function linesIn(bytes: Buffer): ReadonlyMap<string, Span> {
  const spans = new Map<string, Span>();
  for (let at = 0; at < bytes.length; ) {
    const end = bytes.indexOf(NEWLINE, at);
    const blank = bytes.indexOf(SPACE, at);
    if (end < 0 || blank < 0) break;
    if (blank < end) spans.set(bytes.toString("latin1", at, blank), [blank + 1, end]);
    at = end + 1;
  }
  return spans;
}

const bytesOf = (path: string): Buffer => readOwnFile(path, 2 * LARGEST) ?? NONE;

/** Adds lines to a file that is there; false when there is none, or no room in it. */
const append = (path: string, lines: Buffer): boolean =>
  withOwnFile(path, constants.O_WRONLY | constants.O_APPEND, (file, size) => {
    if (size === 0 || size + lines.length > LARGEST) return false;
    // What a run that was killed has left of its last line is ended first.
    const all = Buffer.concat([Buffer.from("\n"), lines]);
    return writeSync(file, all) === all.length;
  }) ?? false;

/** What a run that was killed has left beside: the number of the process stands in its name. */
function isLeftover(name: string): boolean {
  const owner = /^\..*-(\d+)-[0-9a-f]{6}$/u.exec(name)?.[1];
  return owner !== undefined && !isRunning(Number(owner));
}

/**
 * Plain data under keys without blanks, in one file, each in a line with a check of its own. What is new is added at the
 * end; when there is no room the file is written anew. Of two runs that share it each sees whole lines. A file that
 * others could have written is not read. Whatever goes wrong with it costs time and nothing else.
 */
export class Store {
  #bytes: Buffer | undefined;
  #lines: ReadonlyMap<string, Span> = new Map();
  /** What was read of short lines: two states of a repository ask for the same. */
  readonly #known = new Map<string, unknown>();
  readonly #used = new Set<string>();
  readonly #added = new Map<string, string>();
  readonly #unsaved = new Set<string>();
  /** Something in the file is not what was written: it is written anew. */
  #isDamaged = false;

  /**
   * @param path of the file; without one, nothing is kept beyond the run
   * @param edition of Plumbmark: a line that another has written is as damaged
   */
  constructor(
    private readonly path: string | undefined,
    private readonly edition = "",
  ) {}

  get(key: string): unknown {
    if (this.#known.has(key)) return this.#known.get(key);
    const text = this.#added.get(key) ?? this.#read(key);
    if (text === undefined) return undefined;
    try {
      const value: unknown = JSON.parse(text);
      this.#used.add(key);
      if (text.length < SHORT) this.#known.set(key, value);
      return value;
    } catch {
      return undefined;
    }
  }

  set(key: string, value: unknown): void {
    this.#used.add(key);
    this.#known.delete(key);
    this.#unsaved.add(key);
    this.#added.set(key, JSON.stringify(value));
  }

  /** Writes what was added, if anything was. What this run had no use for stays as long as there is room. */
  save(): void {
    if (this.path === undefined || this.#unsaved.size === 0) return;
    try {
      if (this.#isDamaged || !append(this.path, this.#linesOf(this.#unsaved))) this.#writeAnew(this.path);
      this.#unsaved.clear();
      this.#tidy(this.path);
    } catch {
      // The next run finds it anew.
    }
  }

  #writeAnew(path: string): void {
    const used = new Set([...this.#used, ...this.#added.keys()]);
    const others = [...this.#all().keys()].filter((key) => !used.has(key));
    writeInPlace(path, this.#linesOf([...used, ...others]), { mode: 0o600, folderMode: 0o700 });
  }

  #all(): ReadonlyMap<string, Span> {
    if (this.#bytes === undefined) {
      this.#bytes = this.path === undefined ? NONE : bytesOf(this.path);
      this.#lines = linesIn(this.#bytes);
    }
    return this.#lines;
  }

  /** The value kept under a key; one that is not what was written is as none. */
  #read(key: string): string | undefined {
    const [from, to] = this.#all().get(key) ?? [0, 0];
    if (to === 0 || this.#bytes === undefined) return undefined;
    const value = this.#bytes.toString("utf8", from + CHECK + 1, to);
    const check = this.#bytes.toString("latin1", from, from + CHECK + 1);
    if (`${this.#checkOf(key, value)} ` === check) return value;
    this.#isDamaged = true;
    return undefined;
  }

  #checkOf(key: string, value: string): string {
    return createHash("sha256").update(`${this.edition}\n${key} ${value}`).digest("hex").slice(0, CHECK);
  }

  #linesOf(keys: Iterable<string>): Buffer {
    const lines: Buffer[] = [];
    let size = 0;
    for (const key of keys) {
      const value = this.#added.get(key) ?? this.#read(key);
      if (value === undefined) continue;
      const line = Buffer.from(`${key} ${this.#checkOf(key, value)} ${value}\n`);
      if (size + line.length > LARGEST) continue;
      lines.push(line);
      size += line.length;
    }
    return Buffer.concat(lines);
  }

  /** Takes away what other editions kept long ago, and what a run that was killed left beside. */
  #tidy(path: string): void {
    const [folder, kind] = [dirname(path), basename(path).split("-")[0] as string];
    const names = readdirSync(folder);
    const others = names
      .filter((name) => name.startsWith(`${kind}-`) && name !== basename(path))
      .map((name) => ({ name, time: statSync(join(folder, name)).mtimeMs }))
      .sort((one, other) => other.time - one.time);
    const stale = [...names.filter(isLeftover), ...others.slice(EDITIONS).map(({ name }) => name)];
    for (const name of stale) rmSync(join(folder, name), { force: true });
  }
}
