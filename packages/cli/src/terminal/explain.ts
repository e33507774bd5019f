import type { StandardError } from "@plumbmark/core";
import { CommanderError } from "commander";
import { systemFault } from "./system-fault.js";
import { Trouble } from "./trouble.js";

/** A word of more than any path has, and a line of more than anybody reads: what was quoted is cut. */
const LONGEST_WORD = 400;
const LONGEST_LINE = 2000;

const cutTo = (text: string, most: number): string => (text.length > most ? `${text.slice(0, most)}…` : text);

/** A line with its blanks as they are, and its words cut where they are too long. */
const readable = (line: string): string =>
  cutTo(
    line
      .split(" ")
      .map((word) => cutTo(word, LONGEST_WORD))
      .join(" "),
    LONGEST_LINE,
  );

/** `error: unknown option '--al'\n(Did you mean --as?)` as a sentence of our own. */
const sentence = (message: string): string => {
  const text = message.replace(/^error: /u, "").replace(/\s*\n\s*/gu, " ");
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.)?]$/u.test(text) ? "" : "."}`;
};

/** By its name: loading the engine only to explain a wrong word would take longer than the explanation. */
const isStandardError = (error: unknown): error is StandardError =>
  error instanceof Error && error.name === "StandardError";

/** What went wrong and what to do about it, in two lines; what was quoted is cut where it is too long. */
export const explained = (error: unknown, words: readonly string[]): string =>
  toldOf(error, words).split("\n").map(readable).join("\n");

function toldOf(error: unknown, words: readonly string[]): string {
  if (error instanceof Trouble) return `${error.says}\n${error.mend}`;
  if (isStandardError(error)) return `The house standard cannot be used.\n${error.message}`;
  if (error instanceof CommanderError && error.code === "commander.help") {
    const says = words.length === 0 ? "No command was given." : `There is no command \`${words.at(-1)}\`.`;
    return `${says}\nThere are inspect, workings, takeoff, rules, publish, start, mend, approve, collate and hook; \`plumbmark help\` explains them.`;
  }
  if (error instanceof CommanderError) {
    return `${sentence(error.message)}\n\`plumbmark help\` lists the commands and what they take.`;
  }
  const fault = systemFault(error);
  if (fault) return `${fault.says}\n${fault.mend}`;
  const cause = error instanceof Error ? error.message : String(error);
  return `This is a mistake in Plumbmark, not in your documents: ${cause}\nPlease report it with the document that brought it about.`;
}
