import type { Link, Root } from "mdast";
import { type Place, type Positioned, placeOfNode } from "../place.js";
import { plainText } from "./markdown.js";

/** A figure quoted in the prose: `[186 lb](calc:faces.banner.mass)`. */
export interface Quote {
  readonly text: string;
  /** Path of the computed value, or of a schedule. */
  readonly of: string;
  readonly place: Place;
  /** Where its figure alone stands; undefined where that is written in several pieces, or with escapes. */
  readonly figure: Place | undefined;
}

type Node = Positioned & { readonly type: string; readonly value?: string; readonly children?: readonly Node[] };

const leavesOf = (node: Node): readonly Node[] => (node.children ? node.children.flatMap(leavesOf) : [node]);

/** The one text of a link, when it stands in the file as it is read. */
function figureOf(link: Node): Place | undefined {
  const [leaf, ...others] = leavesOf(link);
  if (leaf?.type !== "text" || others.length > 0 || !leaf.position) return undefined;
  const place = placeOfNode(leaf);
  const isAsRead = place.line === place.endLine && place.endColumn - place.column === leaf.value?.length;
  return isAsRead ? place : undefined;
}

export function quotesOf(tree: Root): readonly Quote[] {
  const quotes: Quote[] = [];
  const visit = (node: Node): void => {
    if (node.type === "link" && (node as unknown as Link).url.startsWith("calc:")) {
      const { url } = node as unknown as Link;
      const of = url.slice("calc:".length);
      quotes.push({ text: plainText(node), of, place: placeOfNode(node), figure: figureOf(node) });
    }
    for (const child of node.children ?? []) visit(child);
  };
  visit(tree);
  return quotes;
}
