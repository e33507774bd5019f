import { constants, type Stats } from "node:fs";
import { type FileHandle, lstat, open, opendir, stat } from "node:fs/promises";
import { gitBlobName } from "./blob-name.js";

/** A file larger than this is not paperwork; reading it would only keep the author waiting. */
export const LARGEST = 2_000_000;

/** Why a file cannot be read, and what to do about it. */
export interface ReadProblem {
  readonly says: string;
  readonly mend: string;
  /** Where reading ended; the file's start where nothing was read. */
  readonly at?: { readonly line: number; readonly column: number };
}

/** A text with git's name of its bytes, or what kept it from being read. */
export type Text = { readonly text: string; readonly id?: string } | { readonly problem: ReadProblem };

const problem = (says: string, mend: string): Text => ({ problem: { says, mend } });

export const LEADS_OUTSIDE = problem("The link leads outside the docs repository.", "Put the file itself there.");

export const LIES_OUTSIDE = problem("It lies outside the docs repository.", "Put the file there, and name it there.");

export const LEADS_BACK = problem("The link leads back to a folder it stands in.", "Take the link out.");

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`;

const BY_CODE: Readonly<Record<string, ReadProblem>> = {
  ENOENT: { says: "The file is not there.", mend: "Check its name and folder." },
  EACCES: {
    says: "The file may not be read.",
    mend: "Give yourself the right to read it and to enter the folders it is in.",
  },
  EPERM: {
    says: "The file may not be read.",
    mend: "Give yourself the right to read it and to enter the folders it is in.",
  },
  ENAMETOOLONG: { says: "The name is longer than the disk can have one.", mend: "Give it a shorter name." },
  ERR_INVALID_ARG_VALUE: { says: "No file can have this name.", mend: "Check its name." },
  ELOOP: { says: "The link leads back to itself.", mend: "Put the file itself there." },
};

const isLink = (path: string): Promise<boolean> =>
  lstat(path).then(
    (found) => found.isSymbolicLink(),
    () => false,
  );

async function ofError(error: unknown, path: string): Promise<Text> {
  const code = String((error as NodeJS.ErrnoException)?.code ?? "unknown reason");
  if (code === "ENOENT" && (await isLink(path)))
    return problem("The link leads nowhere.", "Put the file itself there.");
  return {
    problem: BY_CODE[code] ?? {
      says: `The file cannot be read (${code}).`,
      mend: "Check the file and the disk it is on.",
    },
  };
}

/** Why a folder stands where a file was looked for. */
async function ofFolder(path: string): Promise<Text> {
  try {
    await (await opendir(path)).close();
  } catch {
    return problem("The folder may not be read, so what is in it is not known.", "Give yourself the right to read it.");
  }
  if (await isLink(path)) return LEADS_BACK;
  return problem("This is a folder.", "Name a file here.");
}

/** Where in a file of text a byte stands. */
function placeOf(bytes: Uint8Array, offset: number): { readonly line: number; readonly column: number } {
  const lines = new TextDecoder().decode(bytes.subarray(0, offset)).split(/\r\n|\n|\r/u);
  return { line: lines.length, column: (lines.at(-1) as string).length + 1 };
}

const stopped = (bytes: Uint8Array, offset: number, says: string, mend: string): Text => {
  const at = placeOf(bytes, offset);
  return { problem: { says: `${says} at line ${at.line}, column ${at.column}.`, mend, at } };
};

/** What is put in place of what is no UTF-8 begins otherwise than what stood there. */
function firstBad(bytes: Uint8Array): number {
  const back = new TextEncoder().encode(new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes));
  const at = back.findIndex((byte, index) => byte !== bytes[index]);
  return at < 0 ? bytes.length : at;
}

/** Text of few letters beyond ASCII has a zero in every other byte of UTF-16 (Unicode 16, 23.8: its mark may be missing). */
function isUtf16(bytes: Uint8Array): boolean {
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) return true;
  const start = bytes.subarray(0, 64);
  const zeros = (from: 0 | 1): boolean => start.every((byte, index) => (byte === 0) === (index % 2 === from));
  return start.length >= 8 && (zeros(0) || zeros(1));
}

/** Reads bytes as UTF-8; a byte order mark is taken off, anything that is not text is refused. */
export function decode(bytes: Uint8Array): Text {
  if (isUtf16(bytes)) return problem("The file is written in UTF-16.", "Save it as UTF-8.");
  const zero = bytes.indexOf(0);
  if (zero >= 0)
    return stopped(
      bytes,
      zero,
      "The file is not text: it holds a zero byte",
      "Put the text there, or move the file away.",
    );
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch {
    const mend = "Save it as UTF-8 in the program it was written with.";
    return stopped(bytes, firstBad(bytes), "The file is not valid UTF-8", mend);
  }
}

const state = ({ size, mtimeMs, ino }: Stats): string => `${size} ${mtimeMs} ${ino}`;

const tooLarge = (size: number, largest: number): Text =>
  problem(
    `The file is ${megabytes(size)} large; at most ${megabytes(largest)} are read.`,
    "Split it, or move what is not a build document elsewhere.",
  );

/** A file somebody writes to all the while is given up after this many readings. */
const READINGS = 3;

/** Reads what is open; again when it was changed meanwhile, for half of one text and half of another is neither. */
async function readOpen(file: FileHandle, largest: number): Promise<Text> {
  for (let reading = 0; reading < READINGS; reading += 1) {
    const before = await file.stat();
    if (!before.isFile()) return problem("This is not a file.", "Name a file here.");
    if (before.size > largest) return tooLarge(before.size, largest);
    const bytes = Buffer.alloc(before.size);
    const { bytesRead } = await file.read(bytes, 0, before.size, 0);
    if (bytesRead === before.size && state(before) === state(await file.stat()))
      return { ...decode(bytes), id: gitBlobName(bytes) };
  }
  return problem("The file changes while it is read.", "Inspect again when nothing writes to it.");
}

/** Something else than a file would keep whoever opens it waiting, should it take the file's place just now. */
export const AT_ONCE = constants.O_RDONLY | (constants.O_NONBLOCK ?? 0);

/** The text of a file of at most so many bytes. Never throws: what cannot be read is told as a problem. */
export async function readText(path: string, largest = LARGEST): Promise<Text> {
  let file: FileHandle | undefined;
  try {
    const found = await stat(path);
    if (found.isDirectory()) return await ofFolder(path);
    if (!found.isFile()) return problem("This is not a file.", "Name a file here.");
    file = await open(path, AT_ONCE);
    return await readOpen(file, largest);
  } catch (error) {
    return ofError(error, path);
  } finally {
    await file?.close();
  }
}
