import { basename, relative, resolve } from "node:path";
import { choices } from "@plumbmark/core";
import { starterRepository } from "@plumbmark/starter";
import { ask } from "../git/run.js";
import { forges } from "../starting/living-files.js";
import { newRepository } from "../starting/new-repository.js";
import { starterFiles } from "../starting/starter-files.js";
import type { CommandContext } from "../terminal/context.js";
import { Trouble } from "../terminal/trouble.js";
import type { FormOptions } from "./start-document.js";

export interface StartWords extends FormOptions {
  readonly forge?: string;
  readonly version: string;
}

type Start = (name: string, options: StartWords, context: CommandContext) => Promise<number>;

/** What a new one of may be written into the docs repository the command is given in. */
const NEW: Readonly<Record<string, Start>> = {
  rule: async (name, _, context) => (await import("./start-rule.js")).startRuleCommand(name, context),
  build: async (...given) => (await import("./start-document.js")).startBuildCommand(...given),
  wish: async (...given) => (await import("./start-wish.js")).startWishCommand(...given),
  venue: async (...given) => (await import("./start-venue.js")).startVenueCommand(...given),
  part: async (...given) => (await import("./start-document.js")).startPartCommand(...given),
};

/** The forge the repository is pushed to, by the address git knows. */
async function forgeOf(folder: string): Promise<string | undefined> {
  const { status, out } = await ask(folder, ["remote", "get-url", "origin"]).catch(() => ({
    status: 1,
    out: Buffer.alloc(0),
  }));
  const host = status === 0 ? /^(?:\w+:\/\/)?(?:[^@/]*@)?([^:/]+)/u.exec(out.toString("utf8").trim())?.[1] : undefined;
  return forges.find((forge) => host?.split(".").includes(forge));
}

/** Whether git keeps the folder as a part of a larger work tree. */
async function isDeeper(folder: string): Promise<boolean> {
  const { status, out } = await ask(folder, ["rev-parse", "--show-prefix"]).catch(() => ({
    status: 1,
    out: Buffer.alloc(0),
  }));
  return status === 0 && out.toString("utf8").trim() !== "";
}

/** Makes a docs repository from the starter: of a new folder, or of one with something in it. */
async function startRepository(folder: string, options: StartWords, context: CommandContext): Promise<number> {
  const { forge: asked, practice, version } = options;
  if (asked !== undefined && !forges.includes(asked))
    throw new Trouble(`No pipeline is known for \`${asked}\`.`, choices(forges, asked));
  const to = resolve(context.folder, folder);
  // A pipeline file is only looked at where the work tree begins.
  const forge = asked ?? ((await isDeeper(to)) ? undefined : await forgeOf(to));
  const files = await starterFiles(starterRepository, {
    practice,
    version,
    forge,
    name: basename(to),
    today: context.today,
  });
  const { left } = await newRepository(to, files, context.folder);
  const go = relative(context.folder, to);
  const lines = [
    `${folder} is a docs repository now. Its builds are invented examples; those that are not ready show what that looks like.`,
    ...(left.length > 0 ? ["", `Left as it was: ${left.join(", ")}`] : []),
    "",
    ...(go === "" ? [] : [`  cd ${go}`]),
    ...(left.includes("package.json")
      ? [`  npm install --save-dev --save-exact plumbmark@${version}`]
      : ["  npm install             the command, in the version package.json pins"]),
    "  npx plumbmark inspect   judges every build",
    "  npx plumbmark hook      has git judge what a commit would change",
    ...(forge === undefined
      ? ["", "pipeline/inspect.sh is for a pipeline to run; see the page `Installing it` of the guide."]
      : []),
    "",
    "Then change house-standard.yaml, parts/ and stock.yaml to what your own shop has, and write your own documents:",
    "`plumbmark start part NAME`, `plumbmark start build NAME`. The examples may go.",
    "",
  ];
  context.print(lines.join("\n"));
  return 0;
}

/** Makes a new docs repository, or writes something new into the one it is given in; gives the exit status. */
export async function startCommand(
  what: string,
  name: string | undefined,
  options: StartWords,
  context: CommandContext,
): Promise<number> {
  const begin = NEW[what];
  if (begin === undefined && name === undefined) return startRepository(what, options, context);
  const kinds = Object.keys(NEW).join(" | ");
  if (begin === undefined)
    throw new Trouble(
      `\`${name}\` is one word too many.`,
      `Write \`plumbmark start FOLDER\` or \`plumbmark start ${kinds} NAME\`.`,
    );
  if (name === undefined)
    throw new Trouble(
      `The new ${what} has no name.`,
      `Write \`plumbmark start ${what} NAME\`; for a docs repository in a folder called ${what}, write \`plumbmark start ./${what}\`.`,
    );
  return begin(name, options, context);
}
