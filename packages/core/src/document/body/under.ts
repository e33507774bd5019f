import type { Heading, Root, RootContent } from "mdast";
import { type Markdown, plainText } from "./markdown.js";
import { parseBody } from "./parse.js";

interface Part {
  readonly heading: Heading;
  /** Deeper headings and what stands below them included. */
  readonly below: RootContent[];
  /** The heading after it. */
  next?: Heading;
}

/** What stands under the headings of one title. */
function partsUnder(tree: Root, title: string): readonly Part[] {
  const parts: Part[] = [];
  let open: Part | undefined;
  for (const node of tree.children) {
    if (node.type === "heading" && (!open || node.depth <= open.heading.depth)) {
      if (open) open.next = node;
      const isTitled = plainText(node).trim().toLowerCase() === title.toLowerCase();
      open = isTitled ? { heading: node, below: [] } : undefined;
      if (open) parts.push(open);
    } else open?.below.push(node);
  }
  return parts;
}

const lineOf = (heading: Heading | undefined): number | undefined => heading?.position?.start.line;

/** The same from the whole text of these parts, which are read by themselves where that comes to the same. */
function wholeParts(markdown: Markdown, title: string): readonly Part[] {
  const found = partsUnder(markdown.skeleton, title);
  if (markdown.whole || found.length === 0) return found;
  // What a reference or a note means may be written anywhere.
  if (/\]:|[\uFEFF\0]/u.test(markdown.text)) return partsUnder(markdown.tree, title);
  const lines = markdown.text.split(/\r\n|\n|\r/u);
  const texts = found.map(({ heading, next }) => {
    const [from = 1, to = lines.length + 1] = [lineOf(heading), lineOf(next)];
    return lines.slice(from - 1, to - 1).join("\n");
  });
  return partsUnder(parseBody(texts.join("\n\n")), title);
}

/**
 * Text below the headings of one title, deeper headings and what stands below them included; undefined without such
 * a heading. Comments are not shown to anybody and do not count.
 */
export function textUnder(markdown: Markdown, title: string): string | undefined {
  const parts = wholeParts(markdown, title);
  if (parts.length === 0) return undefined;
  const shown = parts.flatMap(({ below }) => below).filter(({ type }) => type !== "html");
  return shown.map((node) => `${plainText(node)}\n`).join("");
}
