import type { Link, Root } from "mdast";
import { type Place, type Positioned, placeOfNode } from "../place.js";
import { plainText } from "./markdown.js";

/** A figure quoted in the prose: `[186 lb](calc:faces.banner.mass)`. */
export interface Quote {
  readonly text: string;
  /** Path of the computed value, or of a schedule. */
  readonly of: string;
  readonly place: Place;
}

export function quotesOf(tree: Root): readonly Quote[] {
  const quotes: Quote[] = [];
  const visit = (
    node: Positioned & { readonly type: string; readonly children?: readonly { type: string }[] },
  ): void => {
    if (node.type === "link" && (node as Link).url.startsWith("calc:")) {
      const { url } = node as Link;
      quotes.push({ text: plainText(node), of: url.slice("calc:".length), place: placeOfNode(node) });
    }
    for (const child of node.children ?? []) visit(child);
  };
  visit(tree);
  return quotes;
}
