import { resolve } from "node:path";
import { type DocumentEntry, nobodyIn, openRepository, person, withApproval } from "@plumbmark/core";
import { openWithRules } from "../engine/open.js";
import { plainMeans } from "../engine/plain.js";
import { textReport } from "../report/text.js";
import { NOT_A_BUILD } from "../repository/build-document.js";
import { fromRoot } from "../source/paths.js";
import { replaceText } from "../source/replace-text.js";
import type { CommandContext } from "../terminal/context.js";
import { Trouble } from "../terminal/trouble.js";

export interface ApproveOptions {
  readonly by: string;
  readonly standard?: string;
  /** False with `--no-plugins`. */
  readonly plugins?: boolean;
}

/** What keeps a document from being approved besides its checks; undefined when nothing does. */
function refusal({ status, verdict }: DocumentEntry, by: string): string | undefined {
  const nobody = nobodyIn(by);
  if (nobody !== undefined) return `\`--by ${by}\` ${nobody}: an approval is somebody's.`;
  if (status === "draft") return "The document is a draft: nobody builds from it, and nobody approves it.";
  return verdict === "ready" ? undefined : "The document would not be ready with this approval.";
}

function refuse(entry: DocumentEntry, why: string, context: CommandContext): number {
  const documents = [entry];
  const { counts, verdict } = entry;
  const totals = { documents: 1, ready: 0, draft: 0, "not-ready": 0, ...counts, [verdict.replace(" ", "-")]: 1 };
  const record = { record: 2 as const, standard: "", standards: [], documents, totals };
  if (entry.checks.length > 0)
    context.print(textReport(record, { width: context.width, colour: context.colour }), "report");
  context.warn(`plumbmark: not approved. ${why}\n`);
  return 1;
}

/**
 * Approves a document as it is: inspects it with the approval in it, and writes that if it is ready then. Gives the exit
 * status: 0 written, 1 refused. @throws Trouble when it cannot be carried out
 */
export async function approveCommand(file: string, options: ApproveOptions, context: CommandContext): Promise<number> {
  const { by, standard, plugins } = options;
  const wanted = { folder: context.folder, paths: [file], standard, today: context.today, plugins, warn: context.warn };
  const { root, files, rules, asked, unreadable } = await openWithRules(wanted, plainMeans);
  if (asked[0]?.folder) throw new Trouble(`\`${file}\` is a folder.`, "Name one build document.");
  const path = fromRoot(root, asked[0]?.path as string);
  const problem = unreadable.find((each) => each.path === path);
  if (problem) throw new Trouble(`${file}: ${problem.says}`, problem.mend);
  const text = files.documents.find((each) => each.path === path)?.text;
  if (text === undefined) throw new Trouble(`${file} is not a build document.`, NOT_A_BUILD);
  const repository = openRepository(files, rules, { today: context.today });
  const { code } = repository.model(path).build.approval;
  const name = person(by)?.name ?? by;
  const approved = code === undefined ? undefined : withApproval(text, { by: name, on: context.today, code });
  if (approved === undefined || code === undefined)
    return refuse(repository.one(path).entry, "Its front matter cannot be read.", context);
  repository.replace(path, approved);
  const { entry } = repository.one(path);
  const why = refusal(entry, by);
  if (why !== undefined) return refuse(entry, why, context);
  if (entry.approval?.code !== code) throw new Error("writing an approval changed what was approved");
  await replaceText(resolve(root, path), text, approved, "The approval");
  context.print(`${path} is approved by ${name} as it is: ${code}.\n`);
  return 0;
}
