import type { Root, RootContent } from "mdast";
import remarkFrontmatter from "remark-frontmatter";
import remarkGfm from "remark-gfm";
import remarkParse from "remark-parse";
import { unified } from "unified";
import { frontMatterOf } from "./front-matter.js";
import type { Mistake } from "./mistake.js";
import { type Place, placeOfNode } from "./place.js";
import { tooDeep } from "./too-deep.js";

/** A Markdown file taken apart: where its front matter stands, and the tree of its body. */
export interface Markdown {
  readonly text: string;
  readonly tree: Root;
  /** Why the body was not read. */
  readonly refused?: Mistake;
  /** Offsets of the YAML between the fences; undefined without front matter. */
  readonly frontMatter?: { readonly from: number; readonly to: number };
}

const processor = unified().use(remarkParse).use(remarkFrontmatter, ["yaml"]).use(remarkGfm);

export function readMarkdown(text: string): Markdown {
  const refused = tooDeep(text);
  if (!refused) return readTree(text, text);
  // The front matter is read all the same.
  return { ...readTree(text, text.slice(0, frontMatterEnd(text))), refused };
}

/** Just behind the closing fence; the beginning without front matter. */
const frontMatterEnd = (text: string): number => {
  const place = frontMatterOf(text);
  return place ? text.indexOf("---", place.to) + 3 : 0;
};

function readTree(text: string, read: string): Markdown {
  const tree = processor.parse(read) as Root;
  const first = tree.children[0];
  if (first?.type !== "yaml") return { text, tree };
  const from = text.indexOf("\n", first.position?.start.offset ?? 0) + 1;
  return { text, tree, frontMatter: { from, to: from + first.value.length } };
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
