import { existsSync } from "node:fs";
import { Trouble } from "../terminal/trouble.js";

const WITHOUT = "or inspect without what needs git";

const BY_CODE: Readonly<Record<string, readonly [reason: string, mend: string]>> = {
  ENOENT: ["there is no such program on the search path", `Install git, ${WITHOUT}.`],
  EACCES: ["you have no right to run it", `Give yourself the right to run it, ${WITHOUT}.`],
  EPERM: ["the system does not permit it", `Give yourself the right to run it, ${WITHOUT}.`],
  EAGAIN: ["the system starts no more programs for you", "End other programs, and try again."],
  ENOMEM: ["there is no memory left for it", "End other programs, and try again."],
  EMFILE: ["too many files are open", "Raise the limit (`ulimit -n`), or end other programs."],
  ENFILE: ["too many files are open", "Raise the limit of the system, or end other programs."],
};

/** Why git could not be started in a folder, and what to do about it. */
export function notStarted(error: unknown, folder: string): Trouble {
  const code = String((error as NodeJS.ErrnoException).code ?? "unknown reason");
  // The system says the same of a program and of a folder that is not there.
  if (code === "ENOENT" && !existsSync(folder))
    return new Trouble(`git cannot be run in ${folder}: the folder is not there any more.`, "Go to another folder.");
  const [reason, mend] = BY_CODE[code] ?? ["the system refused it", `Look what is the matter with git, ${WITHOUT}.`];
  return new Trouble(`The program git cannot be run: ${reason} (${code}).`, mend);
}
