import { spawn } from "node:child_process";
import { Trouble } from "../terminal/trouble.js";
import { notStarted } from "./not-started.js";

/** What git answered: its exit status and what it printed, as bytes, since a file name need not be UTF-8. */
export interface GitAnswer {
  readonly status: number;
  readonly out: Buffer;
  readonly said: string;
}

/** Nothing may wait for an answer at the terminal, and no lock is taken that a commit under way could be waiting for. */
export const environment = (): NodeJS.ProcessEnv => ({
  ...process.env,
  GIT_OPTIONAL_LOCKS: "0",
  GIT_TERMINAL_PROMPT: "0",
  LC_ALL: "C",
});

/**
 * Asks git, from the folder the command was given in: what a hook says by GIT_DIR and GIT_INDEX_FILE is meant from there.
 * @throws Trouble when git cannot be started.
 */
export function ask(folder: string, words: readonly string[], input?: string): Promise<GitAnswer> {
  return new Promise((resolve, reject) => {
    const child = spawn("git", [...words], { cwd: folder, env: environment(), stdio: ["pipe", "pipe", "pipe"] });
    child.on("error", (error) => reject(notStarted(error, folder)));
    // What did not start need not have anything to listen to.
    if (child.pid === undefined) return;
    const out: Buffer[] = [];
    const said: Buffer[] = [];
    child.stdout.on("data", (bytes: Buffer) => out.push(bytes));
    child.stderr.on("data", (bytes: Buffer) => said.push(bytes));
    child.on("close", (status) =>
      resolve({ status: status ?? 1, out: Buffer.concat(out), said: Buffer.concat(said).toString("utf8").trim() }),
    );
    // Git that stops early closes its input; its status tells why.
    child.stdin.on("error", () => undefined);
    child.stdin.end(input);
  });
}

/** The answer of a question git has to be able to answer. @throws Trouble with git's own reason when it cannot. */
export async function answer(folder: string, words: readonly string[], input?: string): Promise<Buffer> {
  const { status, out, said } = await ask(folder, words, input);
  if (status === 0) return out;
  const reason = said.replace(/^(?:fatal|error): /u, "").split("\n")[0];
  throw new Trouble(
    `git cannot tell: ${reason || `\`git ${words[0]}\` ended with ${status}`}.`,
    "Look at the git repository first.",
  );
}

export const text = (bytes: Buffer): string => bytes.toString("utf8").replace(/\r?\n$/u, "");

/** Fields that end with a zero byte. */
export const fields = (bytes: Buffer): readonly string[] => bytes.toString("utf8").split("\0").slice(0, -1);
