import { readFile, stat } from "node:fs/promises";
import { blobName } from "../kept/keys.js";

/** A file larger than this is not paperwork; reading it would only keep the author waiting. */
export const LARGEST = 2_000_000;

/** Why a file cannot be read, and what to do about it. */
export interface Problem {
  readonly says: string;
  readonly mend: string;
}

/** A text with git's name of its bytes, or what kept it from being read. */
export type Text = { readonly text: string; readonly id?: string } | { readonly problem: Problem };

const problem = (says: string, mend: string): Text => ({ problem: { says, mend } });

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`;

const BY_CODE: Readonly<Record<string, Problem>> = {
  ENOENT: { says: "The file is not there.", mend: "Check its name and folder." },
  EACCES: { says: "The file may not be read.", mend: "Give yourself the right to read it." },
  EPERM: { says: "The file may not be read.", mend: "Give yourself the right to read it." },
  ELOOP: { says: "The link leads back to itself.", mend: "Put the file itself there." },
};

function ofError(error: unknown): Text {
  const code = String((error as NodeJS.ErrnoException)?.code ?? "unknown reason");
  return {
    problem: BY_CODE[code] ?? {
      says: `The file cannot be read (${code}).`,
      mend: "Check the file and the disk it is on.",
    },
  };
}

/** Reads bytes as UTF-8; a byte order mark is taken off, anything that is not text is refused. */
export function decode(bytes: Uint8Array): Text {
  const utf16 = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  if (utf16) return problem("The file is written in UTF-16.", "Save it as UTF-8.");
  if (bytes.includes(0))
    return problem("The file is not text: it holds a zero byte.", "Put the text there, or move the file away.");
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch {
    return problem("The file is not valid UTF-8.", "Save it as UTF-8 in the program it was written with.");
  }
}

/** The text of a file of at most so many bytes. Never throws: what cannot be read is told as a problem. */
export async function readText(path: string, largest = LARGEST): Promise<Text> {
  try {
    const found = await stat(path);
    if (!found.isFile()) return problem("This is not a file.", "Name a file here.");
    if (found.size > largest) {
      return problem(
        `The file is ${megabytes(found.size)} large; at most ${megabytes(largest)} are read.`,
        "Split it, or move what is not a build document elsewhere.",
      );
    }
    const bytes = await readFile(path);
    return { ...decode(bytes), id: blobName(bytes) };
  } catch (error) {
    return ofError(error);
  }
}
