import type { Root, RootContent } from "mdast";
import { type FrontMatter, frontMatterOf } from "./front-matter.js";
import type { Mistake } from "./mistake.js";
import { parse } from "./parse.js";
import { type Place, placeOfNode } from "./place.js";
import { tooDeep } from "./too-deep.js";

/** A Markdown file taken apart: where its front matter stands, and the tree of its body. */
export interface Markdown {
  readonly text: string;
  readonly tree: Root;
  /** Why the body was not read. */
  readonly refused?: Mistake;
  /** Offsets of the YAML between the fences; undefined without front matter. */
  readonly frontMatter?: FrontMatter;
}

const linesIn = (text: string): number => text.match(/\r\n|\n|\r/gu)?.length ?? 0;

export function readMarkdown(text: string): Markdown {
  const front = frontMatterOf(text);
  const refused = tooDeep(text, front ? linesIn(text.slice(0, front.to)) + 1 : 0);
  // The front matter is read all the same.
  const read = refused ? text.slice(0, front ? text.indexOf("---", front.to) + 3 : 0) : text;
  const tree = parse(read, front);
  return { text, tree, ...(refused ? { refused } : {}), ...(front ? { frontMatter: front } : {}) };
}

/** Text of a node and everything in it. */
export const plainText = (node: { readonly type: string }): string => {
  const { value, children } = node as { value?: string; children?: { type: string }[] };
  return value ?? children?.map(plainText).join("") ?? "";
};

export interface Section {
  readonly title: string;
  readonly place: Place;
  /** What stands under the heading and the headings below it, up to the next of its own depth; no headings. */
  readonly content: readonly RootContent[];
}

/** Headings of the body with what stands below each; a section that is divided further is not empty. */
export function sectionsOf(tree: Root): readonly Section[] {
  const sections: { title: string; place: Place; content: RootContent[]; depth: number }[] = [];
  let open: typeof sections = [];
  for (const node of tree.children) {
    if (node.type !== "heading") {
      for (const section of open) section.content.push(node);
      continue;
    }
    const section = { title: plainText(node).trim(), place: placeOfNode(node), content: [], depth: node.depth };
    sections.push(section);
    open = [...open.filter(({ depth }) => depth < node.depth), section];
  }
  return sections;
}
