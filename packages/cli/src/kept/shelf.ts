import { randomUUID } from "node:crypto";
import {
  closeSync,
  constants,
  existsSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
  writeSync,
} from "node:fs";
import { basename, dirname, join } from "node:path";
import { isRunning } from "@plumbmark/in-place";
import { CHECK, checkedTogether, checkOf, type Found, linesIn, MANY, type Span, soundIn } from "./lines.js";

/** More than this is not kept: inspecting is then cheaper than reading what was kept. */
const LARGEST = 128_000_000;
/** Files of other editions of Plumbmark that are left beside this one's. */
const EDITIONS = 3;
function remove(path: string): void {
  try {
    rmSync(path, { force: true });
  } catch {
    // There is no such place to leave anything in.
  }
}

/** A folder and those above it, each tried once: `recursive` tries for ever where nothing can be made, as in /proc. */
function makeFolder(path: string): void {
  if (existsSync(path)) return;
  if (dirname(path) !== path) makeFolder(dirname(path));
  try {
    mkdirSync(path);
  } catch (error) {
    // Another run may have made it meanwhile.
    if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
  }
}

const NONE = Buffer.alloc(0);

/** The bytes of a file; what is no file is as none. */
function bytesOf(path: string): Buffer {
  try {
    const found = statSync(path);
    return found.isFile() && found.size <= 2 * LARGEST ? readFileSync(path) : NONE;
  } catch {
    return NONE;
  }
}

/** Adds lines to a file that is there; false when there is none, or no room in it. A link is not written through. */
function appended(path: string, lines: Buffer): boolean {
  const found = lstatSync(path, { throwIfNoEntry: false });
  if (!found?.isFile() || found.size === 0 || found.size + lines.length > LARGEST) return false;
  // What a run that was killed has left of its last line is ended first.
  const file = openSync(path, constants.O_WRONLY | constants.O_APPEND);
  try {
    writeSync(file, Buffer.concat([Buffer.from("\n"), lines]));
  } finally {
    closeSync(file);
  }
  return true;
}

/** What a run that was killed has left beside: the number of the process stands in its name. */
function isLeft(name: string): boolean {
  const owner = /-(\d+)-[0-9a-f]{8}$/u.exec(name)?.[1];
  return owner !== undefined && !isRunning(Number(owner));
}

/**
 * Data kept in one file under keys without blanks, one to a line, each with a checksum, so that only what is looked at
 * has to be checked. What is new is added at the end; when there is no room the file is written anew beside and moved
 * into place. Of two runs that share it each sees whole lines. Whatever goes wrong with it costs time and nothing else.
 */
export class Shelf {
  #bytes: Buffer | undefined;
  #found: Found = { spans: new Map(), together: [] };
  /** Stretches of the file that are as they were written. */
  #sound: readonly Span[] | undefined;
  #looked = 0;
  /** What was read of short lines: two states of a repository ask for the same. */
  readonly #known = new Map<string, unknown>();
  readonly #used = new Set<string>();
  readonly #added = new Map<string, string>();
  /** Something in the file is not what was written: it is written anew. */
  #harmed = false;

  /**
   * @param path of the file; without one, nothing is kept beyond the run
   * @param by the edition of Plumbmark: what another has written is not looked at
   * @param unused how much of what a run had no use for stays; as much as there is room for when nothing is said
   */
  constructor(
    private readonly path: string | undefined,
    private readonly by = "",
    private readonly unused = Number.MAX_SAFE_INTEGER,
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
    this.#added.set(key, JSON.stringify(value));
  }

  /** Writes what was added, if anything was. What this run had no use for stays as long as there is room. */
  save(): void {
    if (this.path === undefined || this.#added.size === 0) return;
    const beside = `${this.path}-${process.pid}-${randomUUID().slice(0, 8)}`;
    try {
      // Where little of what was not used stays, the file is written anew each time, so that it does not grow.
      const grows = this.unused === Number.MAX_SAFE_INTEGER;
      if (grows && !this.#harmed && appended(this.path, this.#lines(this.#added.keys()))) {
        this.#tidy(this.path);
        return;
      }
      const used = new Set([...this.#used, ...this.#added.keys()]);
      const others = [...this.#all().keys()].filter((key) => !used.has(key)).slice(0, this.unused);
      const lines = this.#lines([...used, ...others]);
      makeFolder(dirname(this.path));
      writeFileSync(beside, lines, { flag: "wx" });
      renameSync(beside, this.path);
      this.#tidy(this.path);
    } catch {
      remove(beside);
    }
  }

  #all(): ReadonlyMap<string, Span> {
    if (this.#bytes === undefined) {
      this.#bytes = this.path === undefined ? NONE : bytesOf(this.path);
      this.#found = linesIn(this.#bytes);
    }
    return this.#found.spans;
  }

  /** Whether a line is among those that were checked together; they are when many are looked at. */
  #isSound(from: number): boolean {
    this.#looked += 1;
    if (this.#looked <= MANY) return false;
    this.#sound ??= soundIn(this.by, this.#bytes ?? NONE, this.#found);
    return this.#sound.some(([start, end]) => start <= from && from < end);
  }

  /** The value kept under a key; one that is not what was written is as none. */
  #read(key: string): string | undefined {
    const [from, to] = this.#all().get(key) ?? [0, 0];
    if (to === 0 || this.#bytes === undefined) return undefined;
    const value = this.#bytes.toString("utf8", from + CHECK + 1, to);
    if (this.#isSound(from)) return value;
    const check = this.#bytes.toString("latin1", from, from + CHECK + 1);
    if (`${checkOf(this.by, key, value)} ` === check) return value;
    this.#harmed = true;
    return undefined;
  }

  #lines(keys: Iterable<string>): Buffer {
    const lines: Buffer[] = [];
    let size = 0;
    for (const key of keys) {
      const value = this.#added.get(key) ?? this.#read(key);
      if (value === undefined) continue;
      const line = Buffer.from(`${key} ${checkOf(this.by, key, value)} ${value}\n`);
      if (size + line.length > LARGEST) continue;
      lines.push(line);
      size += line.length;
    }
    return checkedTogether(this.by, lines);
  }

  /** Takes away what other editions kept long ago, and what a run that was killed left beside. */
  #tidy(path: string): void {
    const [folder, kind] = [dirname(path), basename(path).split("-")[0] as string];
    const others = readdirSync(folder)
      .filter((name) => name.startsWith(`${kind}-`) && name !== basename(path))
      .map((name) => ({ name, age: Date.now() - statSync(join(folder, name)).mtimeMs }))
      .sort((one, other) => one.age - other.age);
    const stale = others.filter(
      ({ name, age }, index) => index >= EDITIONS || isLeft(name) || (name.length > 40 && age > DAY),
    );
    for (const { name } of stale) rmSync(join(folder, name), { force: true });
  }
}

const DAY = 86_400_000;
/** Longer texts are read again when they are asked for again. */
const SHORT = 4000;
