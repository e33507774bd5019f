import { realpath } from "node:fs/promises";
import { Trouble } from "../trouble.js";
import { ask, text } from "./run.js";

/** The top folder of the work tree. @throws Trouble when there is none. */
export async function topOf(folder: string): Promise<string> {
  const { status, out } = await ask(folder, ["rev-parse", "--show-toplevel"]);
  const top = text(out);
  if (status !== 0 || top === "")
    throw new Trouble(`${folder} is in no work tree of git.`, "Inspect without --staged, --since and --against there.");
  return realpath(top);
}

/** From the top of the work tree to a folder, `docs/` or nothing; nothing, too, outside git. */
export async function prefixOf(folder: string): Promise<string> {
  const { status, out } = await ask(folder, ["rev-parse", "--show-prefix"]).catch(() => ({
    status: 1,
    out: Buffer.alloc(0),
  }));
  return status === 0 ? text(out) : "";
}

/** The commit a revision names. @throws Trouble when there is none. */
export async function commitOf(folder: string, revision: string): Promise<string> {
  const { status, out } = await ask(folder, [
    "rev-parse",
    "--quiet",
    "--verify",
    "--end-of-options",
    `${revision}^{commit}`,
  ]);
  if (status !== 0)
    throw new Trouble(
      `There is no revision \`${revision}\` here.`,
      "Name a commit, a branch or a tag; fetch it first if it is elsewhere.",
    );
  return text(out);
}

/** The commit the work tree stands on; undefined before the first one. */
export async function headOf(folder: string): Promise<string | undefined> {
  const { status, out } = await ask(folder, ["rev-parse", "--quiet", "--verify", "HEAD^{commit}"]);
  return status === 0 ? text(out) : undefined;
}
