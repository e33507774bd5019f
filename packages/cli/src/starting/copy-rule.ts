import { lstat, readFile, writeFile } from "node:fs/promises";
import { basename } from "node:path";
import { Trouble } from "../terminal/trouble.js";
import { copyFolder, putFolder } from "./put-folder.js";

/** Names the template uses where the new rule has its own. */
const ID = /house\.my-rule/gu;
const FOLDER = /house-rules\/my-rule/gu;

async function refuseThere(to: string): Promise<void> {
  const there = await lstat(to).catch(() => undefined);
  if (there) throw new Trouble(`${to} is there already.`, "Give the rule another name; nothing was changed.");
}

/** Writes a new rule into a folder there is not yet, from the template; nothing that is there is ever touched. */
export async function copyRule(template: string, to: string, id: string): Promise<void> {
  const named = async (from: string, file: string): Promise<void> => {
    const text = await readFile(from, "utf8");
    await writeFile(file, text.replace(ID, id).replace(FOLDER, `house-rules/${basename(to)}`));
  };
  const make = (fresh: string) => copyFolder(template, fresh, named);
  await putFolder("The rule", to, () => refuseThere(to), make);
}
