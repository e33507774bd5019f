import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { isDevice, readHouseStandard } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { starterRule } from "@plumbmark/starter";
import { findStandard, STANDARD } from "../repository/find-standard.js";
import { disk } from "../source/disk.js";
import { readText } from "../source/read-text.js";
import { copyRule } from "../starting/copy-rule.js";
import type { CommandContext } from "../terminal/context.js";
import { Trouble } from "../terminal/trouble.js";

const ID = /^[a-z][a-z0-9-]*\.[a-z][a-z0-9-]*$/u;

const folderOf = (id: string): string => id.replace(/^house\./u, "").replace(".", "-");

/** `two-riggers` is a rule of the house: `house.two-riggers`. */
function idOf(name: string): string {
  const id = name.includes(".") ? name : `house.${name}`;
  if (!ID.test(id))
    throw new Trouble(
      `\`${name}\` is no name of a rule.`,
      "Write small letters, digits and hyphens, such as `two-riggers` or `rigging.two-riggers`.",
    );
  if (isDevice(folderOf(id)))
    throw new Trouble(`\`${name}\` is the name of a device on Windows.`, "Give the rule another name.");
  if (rules.some((rule) => rule.id === id))
    throw new Trouble(`There is a built-in rule \`${id}\`.`, "Give the rule another name.");
  return id;
}

/** Plugins a house standard names already; none when it cannot be read. */
async function pluginsOf(path: string): Promise<readonly string[]> {
  const read = await readText(path);
  return "text" in read ? readHouseStandard({ path: STANDARD, text: read.text }).standard["rules-from"] : [];
}

/** The test imports the kit from where it stands; an inspection brings its own. */
function isKitInstalled(root: string): boolean {
  try {
    createRequire(join(root, STANDARD)).resolve("plumbmark/kit");
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "ERR_PACKAGE_PATH_NOT_EXPORTED";
  }
}

const told = (
  folder: string,
  id: string,
  plugins: readonly string[],
  installed: boolean,
): string => `${folder} has a new rule, ${id}, that passes its own test:

  rule.mjs        the statement, why, how it is judged, and the code
  cases/          a document that holds, one that fails, one that is open
  rule.test.mjs   tries them; run it with ${installed ? "" : "npm install --save-dev plumbmark and then "}node --test ${folder}/rule.test.mjs
  plugin.mjs      what the house standard names

To have it in force, name it in ${STANDARD}:

  rules-from: [${plugins.map((each) => `"${each}"`).join(", ")}]
`;

/** Writes a new rule with cases and a test into the docs repository the command is given in; gives the exit status. */
export async function startRuleCommand(name: string, context: CommandContext): Promise<number> {
  const id = idOf(name);
  const { path: standard } = await findStandard(context.folder, disk);
  if (standard === undefined)
    throw new Trouble(
      `There is no docs repository here: no ${STANDARD} in ${context.folder} or above.`,
      "Begin one with `plumbmark start my-builds`, and start the rule inside it.",
    );
  const root = dirname(standard);
  const folder = `house-rules/${folderOf(id)}`;
  await copyRule(starterRule, join(root, folder), id);
  const plugins = [...(await pluginsOf(standard)), `./${folder}/plugin.mjs`];
  context.print(told(folder, id, plugins, isKitInstalled(root)));
  return 0;
}
