import { realpath } from "node:fs/promises";
import { Trouble } from "../terminal/trouble.js";
import { ask, text } from "./run.js";

const noWorkTree = (folder: string): Trouble =>
  new Trouble(`${folder} is in no work tree of git.`, "Inspect without --staged, --since and --against there.");

/** The top folder of the work tree. @throws Trouble when there is none. */
export async function topOf(folder: string): Promise<string> {
  const { status, out } = await ask(folder, ["rev-parse", "--show-toplevel"]);
  const top = text(out);
  if (status !== 0 || top === "") throw noWorkTree(folder);
  return realpath(top);
}

/** The top folder of the work tree, and the commit it stands on if there is one yet: both in one question. */
export async function placeOf(folder: string): Promise<{ readonly top: string; readonly head: string | undefined }> {
  const { status, out } = await ask(folder, ["rev-parse", "--show-toplevel", "--quiet", "--verify", "HEAD^{commit}"]);
  const [, top = text(out), head] = (status === 0 && /^([\s\S]+)\n([0-9a-f]+)$/u.exec(text(out))) || [];
  if (status > 1 || top === "") throw noWorkTree(folder);
  return { top: await realpath(top), head };
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
