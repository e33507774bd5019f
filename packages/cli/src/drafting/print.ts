import type { DraftRecord } from "@plumbmark/draft";
import { draftMarkdown } from "../report/draft/options-markdown.js";
import { draftText } from "../report/draft/options-text.js";
import { json } from "../report/form.js";
import type { CommandContext } from "../terminal/context.js";
import type { DraftOptions } from "./options.js";

/** Prints what wishes came to, in the form that is asked for. */
export const printDrafts = (records: readonly DraftRecord[], as: DraftOptions["as"], context: CommandContext): void => {
  if (as === "json") context.print(json(records.length === 1 ? records[0] : records), "json");
  else if (as === "markdown") context.print(records.map(draftMarkdown).join("\n"));
  else context.print(records.map((record) => draftText(record, context)).join("\n"), "report");
};
