import chalk from "chalk";

/** What a command needs to know of the world it runs in, so that it can be run without one. */
export interface Surroundings {
  readonly folder: string;
  /** The day the inspection is for, `YYYY-MM-DD`, by the local calendar. */
  readonly today: string;
  /** Columns to write in. */
  readonly width: number;
  /** Colour level of chalk: 0 none, 1 basic, 2 256 colours, 3 true colour. */
  readonly colour: Colour;
  readonly print: (text: string) => void;
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

const localDay = (now: Date): string =>
  [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");

/** Lines that follow one another faster than this cannot be read. */
const SHOWN_MS = 80;

function lineOf(stream: NodeJS.WriteStream): (text: string) => void {
  let last = 0;
  return (text) => {
    const now = Date.now();
    if (text !== "" && now - last < SHOWN_MS) return;
    last = now;
    stream.write(`\r\u001b[K${text}`);
  };
}

/** Ctrl-C ends the process as ever, unless a command waits for it: then it may tidy up first. */
const interrupted = (): Promise<void> => new Promise((resolve) => process.once("SIGINT", () => resolve()));

/** The surroundings of the running process: no colour when it is not a terminal or when NO_COLOR is set. */
export function ofProcess(): Surroundings {
  const { stdout, stderr, env } = process;
  const plain = !stdout.isTTY || (env.NO_COLOR ?? "") !== "";
  return {
    folder: process.cwd(),
    today: localDay(new Date()),
    width: Math.max(NARROWEST, Math.min(WIDEST, (stdout.isTTY && stdout.columns) || WIDEST)),
    colour: plain ? 0 : chalk.level,
    print: (text) => void stdout.write(text),
    warn: (text) => void stderr.write(text),
    ...(stderr.isTTY ? { progress: lineOf(stderr) } : {}),
    ended: interrupted,
  };
}
