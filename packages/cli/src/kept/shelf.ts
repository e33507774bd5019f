import { createHash, randomUUID } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { runs } from "@plumbmark/docs-site/beside";

/** More than this is not kept: inspecting is then cheaper than reading what was kept. */
const LARGEST = 128_000_000;
/** Files of other editions of Plumbmark that are left beside this one's. */
const EDITIONS = 3;
const NEWLINE = 10;
const SPACE = 32;
const HEAD = 64 + 1;

/** The edition is part of it: what another one wrote is as damaged. */
const digest = (bytes: Uint8Array, by: string): string =>
  createHash("sha256").update(`${by}\n`).update(bytes).digest("hex");

type Span = readonly [from: number, to: number];

/** Where each line's value stands; the key is what stands before its first blank. */
function spansOf(bytes: Buffer): Map<string, Span> {
  const spans = new Map<string, Span>();
  for (let at = HEAD; at < bytes.length; ) {
    const end = bytes.indexOf(NEWLINE, at);
    const blank = bytes.indexOf(SPACE, at);
    if (end < 0 || blank < 0 || blank > end) break;
    spans.set(bytes.toString("latin1", at, blank), [blank + 1, end]);
    at = end + 1;
  }
  return spans;
}

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

/** The bytes of a file if they are what was written; a damaged file is as none, and so is what is no file. */
function sound(path: string, by: string): Buffer {
  try {
    const found = statSync(path);
    if (!found.isFile() || found.size > 2 * LARGEST) return NONE;
    const bytes = readFileSync(path);
    const whole =
      bytes[HEAD - 1] === NEWLINE && digest(bytes.subarray(HEAD), by) === bytes.toString("latin1", 0, HEAD - 1);
    return whole ? bytes : NONE;
  } catch {
    return NONE;
  }
}

/** What a run that was killed has left beside: the number of the process stands in its name. */
function isLeft(name: string): boolean {
  const owner = /-(\d+)-[0-9a-f]{8}$/u.exec(name)?.[1];
  return owner !== undefined && !runs(Number(owner));
}

/**
 * Data kept in one file under keys without blanks, one to a line, below a checksum of the rest. It is written beside
 * and moved into place, so two runs that share it each see a whole one; the later one stays. Whatever goes wrong with
 * it costs time and nothing else.
 */
export class Shelf {
  #bytes: Buffer | undefined;
  #spans: Map<string, Span> = new Map();
  readonly #used = new Set<string>();
  readonly #added = new Map<string, string>();

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
    const text = this.#added.get(key) ?? this.#read(key);
    if (text === undefined) return undefined;
    try {
      const value: unknown = JSON.parse(text);
      this.#used.add(key);
      return value;
    } catch {
      return undefined;
    }
  }

  set(key: string, value: unknown): void {
    this.#used.add(key);
    this.#added.set(key, JSON.stringify(value));
  }

  /** Writes what was added, if anything was. What this run had no use for stays as long as there is room. */
  save(): void {
    if (this.path === undefined || this.#added.size === 0) return;
    const beside = `${this.path}-${process.pid}-${randomUUID().slice(0, 8)}`;
    try {
      const lines = this.#lines();
      makeFolder(dirname(this.path));
      writeFileSync(beside, Buffer.concat([Buffer.from(`${digest(lines, this.by)}\n`), lines]), { flag: "wx" });
      renameSync(beside, this.path);
      this.#tidy(this.path);
    } catch {
      remove(beside);
    }
  }

  #read(key: string): string | undefined {
    if (this.#bytes === undefined) {
      this.#bytes = this.path === undefined ? NONE : sound(this.path, this.by);
      this.#spans = spansOf(this.#bytes);
    }
    const span = this.#spans.get(key);
    return span && this.#bytes.toString("utf8", span[0], span[1]);
  }

  #lines(): Buffer {
    this.#read("");
    const used = new Set([...this.#used, ...this.#added.keys()]);
    const others = [...this.#spans.keys()].filter((key) => !used.has(key)).slice(0, this.unused);
    const keys = [...used, ...others];
    const lines: Buffer[] = [];
    let size = 0;
    for (const key of keys) {
      const value = this.#added.get(key) ?? this.#read(key);
      const line = Buffer.from(`${key} ${value}\n`);
      if (value === undefined || size + line.length > LARGEST) continue;
      lines.push(line);
      size += line.length;
    }
    return Buffer.concat(lines);
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
