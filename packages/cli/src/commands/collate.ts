import { collated } from "../record/collated.js";
import { type NamedRecord, readRecord } from "../record/read-record.js";
import { markdownPieces } from "../report/markdown.js";
import { recordPieces, together } from "../report/pieces.js";
import { textPieces } from "../report/text.js";
import type { CommandContext } from "../terminal/context.js";
import { Trouble } from "../terminal/trouble.js";

/** Two records of one name would be taken for one repository. */
function refuseTwins(records: readonly NamedRecord[]): void {
  const names = records.map(({ name }) => name);
  const twin = names.find((name, index) => names.indexOf(name) !== index);
  if (twin !== undefined)
    throw new Trouble(`There is more than one record called ${twin}.`, "Name each file after its repository.");
}

/** Joins the records of several docs repositories and prints the whole; gives the exit status. */
export async function collateCommand(
  paths: readonly string[],
  { as }: { readonly as: "text" | "json" | "markdown" },
  context: CommandContext,
): Promise<number> {
  const records: NamedRecord[] = [];
  for (const path of paths) records.push(await readRecord(context.folder, path));
  refuseTwins(records);
  const record = collated(records);
  const pieces = { json: recordPieces, markdown: markdownPieces, text: textPieces }[as](record, context);
  for (const piece of together(pieces))
    context.print(piece, as === "text" ? "report" : as === "json" ? "json" : "text");
  return record.totals["not-ready"] > 0 ? 1 : 0;
}
