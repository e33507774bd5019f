import { mkdir, readdir, readFile, rename, rm, stat, writeFile } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { Trouble } from "../trouble.js";

/** Names the template uses where the new rule has its own. */
const ID = /house\.my-rule/gu;
const FOLDER = /house-rules\/my-rule/gu;

async function copyInto(from: string, to: string, id: string, name: string): Promise<void> {
  await mkdir(to, { recursive: true });
  for (const entry of await readdir(from, { withFileTypes: true })) {
    const [source, target] = [join(from, entry.name), join(to, entry.name)];
    if (entry.isDirectory()) await copyInto(source, target, id, name);
    else {
      const text = await readFile(source, "utf8");
      await writeFile(target, text.replace(ID, id).replace(FOLDER, `house-rules/${name}`));
    }
  }
}

/**
 * Writes a new rule into a folder there is not yet, from the template. It is written beside and moved into place, and
 * nothing that is there is ever touched.
 */
export async function copyRule(template: string, to: string, id: string): Promise<void> {
  const there = await stat(to).catch(() => undefined);
  if (there) throw new Trouble(`${to} is there already.`, "Give the rule another name; nothing was changed.");
  const beside = join(dirname(to), `.${basename(to)}-${process.pid}`);
  try {
    await mkdir(dirname(to), { recursive: true });
    await copyInto(template, beside, id, basename(to));
    await rename(beside, to);
  } catch (error) {
    await rm(beside, { recursive: true, force: true });
    throw new Trouble(
      `The rule cannot be written to ${to}: ${(error as Error).message}`,
      "Check that the folder may be written to.",
    );
  }
}
