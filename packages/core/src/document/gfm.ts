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

/** What remark-gfm reads besides addresses. Looking for those at every letter takes nearly half the time of a body. */
export function gfmWithoutAddresses(this: Processor): void {
  const data = this.data();
  data.micromarkExtensions = [gfmFootnote(), gfmStrikethrough(), gfmTable(), gfmTaskListItem()];
  data.fromMarkdownExtensions = [
    gfmFootnoteFromMarkdown(),
    gfmStrikethroughFromMarkdown(),
    gfmTableFromMarkdown(),
    gfmTaskListItemFromMarkdown(),
  ];
}
