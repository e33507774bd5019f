import { createHash, randomUUID } from "node:crypto";
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import type { Facts } from "../files/seen.js";
import { edition } from "../kept/edition.js";
import { keptIn } from "../kept/place.js";
import type { Surroundings } from "../surroundings.js";
import { condensed, stillSo } from "./still-so.js";

// What a whole command line came to, with everything it saw. While it would see the same, it need not be carried out.

/** What a command line printed, and its exit status. */
export interface Answer {
  readonly status: number;
  readonly warned: readonly string[];
  readonly printed: Uint8Array;
}

/** More than this is not kept. */
export const LARGEST = 64_000_000;
/** Command lines whose answers are kept for a docs repository. */
const MOST = 12;
const HEAD = 64 + 1;
const NEWLINE = 10;

const digest = (...parts: readonly (string | Uint8Array)[]): string => {
  const hash = createHash("sha256");
  for (const part of parts) hash.update(part);
  return hash.digest("hex");
};

/** Where the answer to a command line is kept: by its words and everything else it rests on besides the disk. */
export function placeOf(words: readonly string[], { folder, today, width, colour }: Surroundings): string | undefined {
  if (edition === undefined || words.includes("--no-cache")) return undefined;
  const kept = keptIn(folder);
  const key = digest(JSON.stringify([edition, process.version, words, folder, today, width, colour]));
  return kept && join(kept, "answers", key);
}

interface Head {
  readonly status: number;
  readonly warned: readonly string[];
  readonly facts: Facts;
}

function taken(bytes: Buffer): (Head & { readonly printed: Buffer }) | undefined {
  if (digest(bytes.subarray(HEAD)) !== bytes.toString("latin1", 0, HEAD - 1)) return undefined;
  const end = bytes.indexOf(NEWLINE, HEAD);
  const head = JSON.parse(bytes.toString("utf8", HEAD, end)) as Head;
  return { ...head, printed: bytes.subarray(end + 1) };
}

/** The answer kept there; undefined when there is none, it is damaged, or anything it rests on has changed. */
export function answerAt(path: string | undefined): Answer | undefined {
  if (path === undefined) return undefined;
  try {
    const found = taken(readFileSync(path));
    return found && stillSo(found.facts) ? found : undefined;
  } catch {
    return undefined;
  }
}

/** Takes away the answers that were kept longest ago. */
function tidy(folder: string): void {
  const all = readdirSync(folder).map((name) => ({ name, time: statSync(join(folder, name)).mtimeMs }));
  for (const { name } of all.sort((one, other) => other.time - one.time).slice(MOST))
    rmSync(join(folder, name), { force: true });
}

function remove(path: string): void {
  try {
    rmSync(path, { force: true });
  } catch {
    // The disk that refused to write it may refuse this, too.
  }
}

/** Keeps an answer, beside and then in its place; whatever goes wrong costs time and nothing else. */
export function keepAnswer(path: string, { status, warned, printed }: Answer, facts: Facts): void {
  const beside = `${path}-${randomUUID()}`;
  try {
    const head = Buffer.from(`${JSON.stringify({ status, warned, facts: condensed(facts) })}\n`);
    mkdirSync(dirname(path), { recursive: true });
    const parts = [Buffer.from(`${digest(head, printed)}\n`), head, printed];
    writeFileSync(beside, Buffer.concat(parts), { flag: "wx" });
    renameSync(beside, path);
    tidy(dirname(path));
  } catch {
    remove(beside);
  }
}
