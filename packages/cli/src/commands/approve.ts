import { readFile, rename, stat, writeFile } from "node:fs/promises";
import { basename, join, resolve } from "node:path";
import { type DocumentEntry, nobodyIn, openRepository, person, withApproval } from "@plumbmark/core";
import { placeBeside, removeLeft } from "@plumbmark/docs-site/beside";
import { NOT_A_BUILD } from "../files/build-document.js";
import { fromRoot } from "../files/find-files.js";
import { systemFault } from "../files/system-fault.js";
import { textReport } from "../report/text.js";
import type { Surroundings } from "../surroundings.js";
import { Trouble } from "../trouble.js";
import { open } from "./open.js";

export interface ApproveOptions {
  readonly by: string;
  readonly standard?: string;
  /** False with `--no-plugins`. */
  readonly plugins?: boolean;
}

const CHANGED = new Trouble(
  "The document was changed meanwhile; nothing was written.",
  "Look at it again, and approve what it is then.",
);

/** Puts a text in the place of another, whole or not at all. @throws Trouble */
async function replaceText(path: string, was: string, is: string): Promise<void> {
  await removeLeft(path);
  const place = await placeBeside(path);
  try {
    const fresh = join(place.fresh, basename(path));
    await writeFile(fresh, is, { flush: true, mode: (await stat(path)).mode });
    if ((await readFile(path, "utf8")) !== was) throw CHANGED;
    await rename(fresh, path);
  } catch (error) {
    if (error instanceof Trouble) throw error;
    const { says, mend } = systemFault(error) ?? { says: String(error), mend: "Look at the disk." };
    throw new Trouble(`The approval cannot be written. ${says}`, mend);
  } finally {
    await place.remove();
  }
}

/** What keeps a document from being approved besides its checks; undefined when nothing does. */
function refusal({ status, verdict }: DocumentEntry, by: string): string | undefined {
  const nobody = nobodyIn(by);
  if (nobody !== undefined) return `\`--by ${by}\` ${nobody}: an approval is somebody's.`;
  if (status === "draft") return "The document is a draft: nobody builds from it, and nobody approves it.";
  return verdict === "ready" ? undefined : "The document would not be ready with this approval.";
}

function refuse(entry: DocumentEntry, why: string, around: Surroundings): number {
  const documents = [entry];
  const { counts, verdict } = entry;
  const totals = { documents: 1, ready: 0, draft: 0, "not-ready": 0, ...counts, [verdict.replace(" ", "-")]: 1 };
  const record = { record: 2 as const, standard: "", standards: [], documents, totals };
  if (entry.checks.length > 0) around.print(textReport(record, { width: around.width, colour: around.colour }));
  around.warn(`plumbmark: not approved. ${why}\n`);
  return 1;
}

/**
 * Approves a document as it is: inspects it with the approval in it, and writes that if it is ready then. Gives the exit
 * status: 0 written, 1 refused. @throws Trouble when it cannot be carried out
 */
export async function approveCommand(file: string, options: ApproveOptions, around: Surroundings): Promise<number> {
  const { by, standard, plugins } = options;
  const wanted = { folder: around.folder, paths: [file], standard, today: around.today, plugins, warn: around.warn };
  const { root, files, rules, asked, unreadable } = await open(wanted);
  if (asked[0]?.folder) throw new Trouble(`\`${file}\` is a folder.`, "Name one build document.");
  const path = fromRoot(root, asked[0]?.path as string);
  const problem = unreadable.find((each) => each.path === path);
  if (problem) throw new Trouble(`${file}: ${problem.says}`, problem.mend);
  const text = files.documents.find((each) => each.path === path)?.text;
  if (text === undefined) throw new Trouble(`${file} is not a build document.`, NOT_A_BUILD);
  const repository = openRepository(files, rules, { today: around.today });
  const { code } = repository.model(path).build.approval;
  const name = person(by)?.name ?? by;
  const approved = code === undefined ? undefined : withApproval(text, { by: name, on: around.today, code });
  if (approved === undefined || code === undefined)
    return refuse(repository.one(path).entry, "Its front matter cannot be read.", around);
  repository.replace(path, approved);
  const { entry } = repository.one(path);
  const why = refusal(entry, by);
  if (why !== undefined) return refuse(entry, why, around);
  if (entry.approval?.code !== code) throw new Error("writing an approval changed what was approved");
  await replaceText(resolve(root, path), text, approved);
  around.print(`${path} is approved by ${name} as it is: ${code}.\n`);
  return 0;
}
