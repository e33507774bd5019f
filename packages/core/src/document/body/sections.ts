import type { Root, RootContent } from "mdast";
import { type Place, placeOfNode } from "../place.js";
import { type Markdown, plainText } from "./markdown.js";

export interface Section {
  readonly title: string;
  readonly place: Place;
  /** What stands below it; nobody is shown a comment. */
  readonly holds: "nothing" | "comment" | "text";
  /** What stands under the heading and the headings below it, up to the next of its own depth; no headings. */
  readonly content: readonly RootContent[];
}

type Part = Pick<Section, "title" | "place"> & { readonly content: RootContent[]; readonly depth: number };

function partsOf(tree: Root): readonly Part[] {
  const parts: Part[] = [];
  let open: Part[] = [];
  for (const node of tree.children) {
    if (node.type !== "heading") {
      for (const part of open) part.content.push(node);
      continue;
    }
    const part = { title: plainText(node).trim(), place: placeOfNode(node), content: [], depth: node.depth };
    parts.push(part);
    open = [...open.filter(({ depth }) => depth < node.depth), part];
  }
  return parts;
}

const isComment = (node: RootContent): boolean => node.type === "html" && /^<!--[\s\S]*-->\s*$/u.test(node.value);

const held = (content: readonly RootContent[]): Section["holds"] =>
  content.length === 0 ? "nothing" : content.every(isComment) ? "comment" : "text";

/** Headings of the body with what stands below each; a section that is divided further is not empty. */
export function sectionsOf(markdown: Markdown): readonly Section[] {
  let whole: readonly Part[] | undefined;
  return partsOf(markdown.skeleton).map(({ title, place, content }, index) => ({
    title,
    place,
    holds: held(content),
    get content() {
      whole ??= partsOf(markdown.tree);
      return (whole[index] as Part).content;
    },
  }));
}
