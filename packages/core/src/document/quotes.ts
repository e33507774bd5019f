import type { Link, Root } from "mdast";
import { plainText } from "./markdown.js";
import { type Place, START } from "./place.js";

/** A figure quoted in the prose: `[186 lb](calc:faces.banner.mass)`. */
export interface Quote {
  readonly text: string;
  /** Path of the computed value, or of a schedule. */
  readonly of: string;
  readonly place: Place;
}

export function quotesOf(tree: Root): readonly Quote[] {
  const quotes: Quote[] = [];
  const visit = (node: { readonly type: string; readonly children?: readonly { type: string }[] }): void => {
    if (node.type === "link" && (node as Link).url.startsWith("calc:")) {
      const { position } = node as Link;
      const place: Place = position
        ? {
            line: position.start.line,
            column: position.start.column,
            endLine: position.end.line,
            endColumn: position.end.column,
          }
        : START;
      quotes.push({ text: plainText(node), of: (node as Link).url.slice("calc:".length), place });
    }
    for (const child of node.children ?? []) visit(child);
  };
  visit(tree);
  return quotes;
}
