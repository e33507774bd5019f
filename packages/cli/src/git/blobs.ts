import { execFileSync } from "node:child_process";
import { decode, LARGEST, type Text } from "../source/read-text.js";
import type { GitBatch } from "./batch.js";
import { notStarted } from "./not-started.js";
import { answer, environment } from "./run.js";

const NEWLINE = 10;

const gone: Text = {
  problem: { says: "Git does not have the content of the file.", mend: "Fetch it, or stage the file again." },
};

const large = (size: number): Text => ({
  problem: {
    says: `The file is ${(size / 1e6).toFixed(1)} MB large; at most ${(LARGEST / 1e6).toFixed(1)} MB are read.`,
    mend: "Split it, or move what is not a build document elsewhere.",
  },
});

/** Contents read so far, by their names: two states of a repository share most of theirs. */
export class Read extends Map<string, Text> {
  /** @param batch answers what is to be read; without one, a git is asked for each question */
  constructor(readonly batch?: GitBatch) {
    super();
  }
}

/** Takes the answer of `git cat-file --batch` apart. */
function take(bytes: Buffer, ids: readonly string[], read: Read): void {
  let at = 0;
  for (const id of ids) {
    const end = bytes.indexOf(NEWLINE, at);
    const [, kind, written] = bytes.toString("latin1", at, end).split(" ");
    at = end + 1;
    if (kind !== "blob" || written === undefined) {
      read.set(id, gone);
      continue;
    }
    const size = Number(written);
    read.set(id, size > LARGEST ? large(size) : decode(bytes.subarray(at, at + size)));
    at += size + 1;
  }
}

const missing = (ids: readonly string[], read: Read): readonly string[] =>
  [...new Set(ids)].filter((id) => !read.has(id));

const QUESTION = ["cat-file", "--batch"];
const asked = (ids: readonly string[]): string => `${ids.join("\n")}\n`;

/** Contents by git's names of them, all in one question: a program started for each would take a hundred times as long. */
export async function readBlobs(
  folder: string,
  ids: readonly string[],
  read: Read,
): Promise<ReadonlyMap<string, Text>> {
  const wanted = missing(ids, read);
  if (wanted.length > 0) take(await (read.batch?.ask(wanted) ?? answer(folder, QUESTION, asked(wanted))), wanted, read);
  return new Map(ids.map((id) => [id, read.get(id) ?? gone]));
}

function answerNow(folder: string, input: string): Buffer {
  try {
    return execFileSync("git", QUESTION, {
      cwd: folder,
      env: environment(),
      input,
      maxBuffer: Number.POSITIVE_INFINITY,
    });
  } catch (error) {
    throw "syscall" in (error as Error) ? notStarted(error, folder) : error;
  }
}

/** The same where nobody can wait: for the text of a document that was thought not to be needed. */
export function readBlobsNow(folder: string, ids: readonly string[], read: Read): ReadonlyMap<string, Text> {
  const wanted = missing(ids, read);
  if (wanted.length > 0) take(answerNow(folder, asked(wanted)), wanted, read);
  return new Map(ids.map((id) => [id, read.get(id) ?? gone]));
}
