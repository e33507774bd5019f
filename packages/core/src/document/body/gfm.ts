import { gfmFootnoteFromMarkdown } from "mdast-util-gfm-footnote";
import { gfmStrikethroughFromMarkdown } from "mdast-util-gfm-strikethrough";
import { gfmTableFromMarkdown } from "mdast-util-gfm-table";
import { gfmTaskListItemFromMarkdown } from "mdast-util-gfm-task-list-item";
import { gfmFootnote } from "micromark-extension-gfm-footnote";
import { gfmStrikethrough } from "micromark-extension-gfm-strikethrough";
import { gfmTable } from "micromark-extension-gfm-table";
import { gfmTaskListItem } from "micromark-extension-gfm-task-list-item";
import type { Processor } from "unified";

/**
 * Whether a text may hold an address that becomes a link by itself. They begin with `www` or `http` or have an @ in
 * them; any of these may be written as a character reference.
 */
export const mayHoldAddress = (text: string): boolean => /www|http|@|&[#a-z]/iu.test(text);

/** What remark-gfm reads besides addresses, each with the marks no text can have it without. */
const PARTS = [
  { marks: /\[\^/u, syntax: gfmFootnote, tree: gfmFootnoteFromMarkdown },
  { marks: /~/u, syntax: gfmStrikethrough, tree: gfmStrikethroughFromMarkdown },
  // Of one column without a bar, a line of colons and hyphens is a table; one of hyphens alone makes a heading.
  { marks: /\||:-|-:/u, syntax: gfmTable, tree: gfmTableFromMarkdown },
  { marks: /\[[\sxX]/u, syntax: gfmTaskListItem, tree: gfmTaskListItemFromMarkdown },
] as const;

/** What a text without addresses may hold of it: whether each part stands in it. */
export const gfmIn = (text: string): string => PARTS.map(({ marks }) => Number(marks.test(text))).join("");

/**
 * As much of remark-gfm as a text may hold. Each part is tried at every line or letter: addresses take nearly half the
 * time of a body, tables a fifth of one that has none.
 * @param held as `gfmIn` says
 */
export function gfmHeld(this: Processor, held: string): void {
  const parts = PARTS.filter((_, index) => held[index] === "1");
  const data = this.data();
  data.micromarkExtensions = parts.map(({ syntax }) => syntax());
  data.fromMarkdownExtensions = parts.map(({ tree }) => tree());
}
