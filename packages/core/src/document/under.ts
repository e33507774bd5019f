import type { Root } from "mdast";
import { plainText } from "./markdown.js";

/**
 * Text below the headings of one title, deeper headings and what stands below them included; undefined without such
 * a heading. Comments are not shown to anybody and do not count.
 */
export function textUnder(tree: Root, title: string): string | undefined {
  let depth: number | undefined;
  let text: string | undefined;
  for (const node of tree.children) {
    if (node.type === "heading") {
      if (depth !== undefined && node.depth > depth) text += `${plainText(node)}\n`;
      else {
        depth = plainText(node).trim().toLowerCase() === title.toLowerCase() ? node.depth : undefined;
        if (depth !== undefined) text ??= "";
      }
    } else if (depth !== undefined && node.type !== "html") text += `${plainText(node)}\n`;
  }
  return text;
}
