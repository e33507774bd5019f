import { fstatSync, writeSync } from "node:fs";
import { isatty } from "node:tty";
import chalk from "chalk";
import { notWritten } from "./system-fault.js";
import { Trouble } from "./trouble.js";

/** What a command needs to know of the world it runs in, so that it can be run without one. */
export interface CommandContext {
  readonly folder: string;
  /** The day the inspection is for, `YYYY-MM-DD`, by the local calendar. */
  readonly today: string;
  /** Columns to write in. */
  readonly width: number;
  /** Colour level of chalk: 0 none, 1 basic, 2 256 colours, 3 true colour. */
  readonly colour: Colour;
  /**
   * Prints a piece of the result. `form` tells when it is a report, which alone has colours of ours in it, or JSON, in
   * which what may not be printed is escaped.
   */
  readonly print: (text: string, form?: "text" | "report" | "json") => void;
  readonly warn: (text: string) => void;
  /** Shows how far a long piece of work is, in one line that the next takes the place of; only on a terminal. */
  readonly progress?: (text: string) => void;
  /** Waits for whoever runs the command to end it; without it, a command that goes on for ever does so. */
  readonly ended?: () => Promise<void>;
}

export type Colour = 0 | 1 | 2 | 3;

/** A report wider than this is hard to read; one narrower than the least is broken in the middle of words. */
const WIDEST = 110;
const NARROWEST = 50;

/** A day of the local calendar, `2027-03-05`. */
export const localDay = (now: Date): string =>
  [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");

/** A terminal, a pipe or a socket; anything else is a file, or as good as one. */
function isStream(file: number): boolean {
  const found = fstatSync(file);
  return isatty(file) || found.isFIFO() || found.isSocket();
}

/** Lines that follow one another faster than this cannot be read. */
const SHOWN_MS = 80;

function lineOf(stream: NodeJS.WriteStream): (text: string) => void {
  let last = 0;
  let isShown = false;
  return (text) => {
    const now = Date.now();
    if (text === "" ? !isShown : now - last < SHOWN_MS) return;
    last = now;
    isShown = text !== "";
    stream.write(`\r\u001b[K${text}`);
  };
}

/**
 * Writes to a file that the output was sent to. The stream of Node.js would give up after what fits on a full disk,
 * without a word; here the rest is tried, and whoever prints is told the reason.
 */
function writeWhole(file: number, text: string | Uint8Array): void {
  const bytes = typeof text === "string" ? Buffer.from(text) : text;
  for (let at = 0; at < bytes.length; ) at += writeSync(file, bytes, at);
}

/** A way to print to a stream of the process. */
function streamPrinter(stream: NodeJS.WriteStream & { readonly fd: number }): (text: string | Uint8Array) => void {
  if (isStream(stream.fd)) return (text) => void stream.write(text);
  return (text) => {
    try {
      writeWhole(stream.fd, text);
    } catch (error) {
      // What was asked for did not arrive, whatever it came to.
      throw notWritten("The output", "where it was sent", error, "What is there is not whole.");
    }
  };
}

/** Ctrl-C ends the process as ever, unless a command waits for it: then it may tidy up first. */
const interrupted = (): Promise<void> => new Promise((resolve) => process.once("SIGINT", () => resolve()));

/** The folder the command is given in. @throws Trouble when somebody took it away meanwhile */
function here(): string {
  try {
    return process.cwd();
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    throw new Trouble(`The folder this is run in is not there any more (${code}).`, "Go to another folder first.");
  }
}

/** The context of the running process: no colour when it is not a terminal or when NO_COLOR is set. */
export function processContext(): CommandContext {
  const { stdout, stderr, env } = process;
  const progress = stderr.isTTY ? lineOf(stderr) : undefined;
  // What is said is not said behind how far it is.
  const clear =
    (say: (text: string) => void) =>
    (text: string): void => {
      progress?.("");
      say(text);
    };
  const plain = !stdout.isTTY || (env.NO_COLOR ?? "") !== "";
  return {
    folder: here(),
    today: localDay(new Date()),
    width: Math.max(NARROWEST, Math.min(WIDEST, (stdout.isTTY && stdout.columns) || WIDEST)),
    colour: plain ? 0 : chalk.level,
    print: clear(streamPrinter(stdout)),
    warn: clear((text) => void stderr.write(text)),
    ...(progress ? { progress } : {}),
    ended: interrupted,
  };
}
