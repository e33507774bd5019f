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
}

export type Colour = 0 | 1 | 2 | 3;

/** A report wider than this is hard to read; one narrower than the least is broken in the middle of words. */
const WIDEST = 110;
const NARROWEST = 50;

const localDay = (now: Date): string =>
  [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");

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
  };
}
