import { plainText } from "@plumbmark/core";
import type { Element, ElementContent } from "hast";
import { h } from "hastscript";
import { defaultHandlers, type Handler } from "mdast-util-to-hast";

/** The table or drawing a link to `schedules.` or `drawings.` stands for; undefined when there is none of that name. */
export type FigureFor = (of: string, words: string) => Element | undefined;

interface Node {
  readonly type: string;
  readonly url?: string;
  readonly value?: string;
  readonly children?: readonly Node[];
}

const CALC = "calc:";

/** The one link a paragraph consists of, if it is one to a schedule or a drawing. */
function figureOf({ children = [] }: Node): { readonly of: string; readonly words: string } | undefined {
  const [only, ...more] = children.filter(({ type, value }) => type !== "text" || value?.trim() !== "");
  if (only?.type !== "link" || more.length > 0 || !only.url?.startsWith(CALC)) return undefined;
  const of = only.url.slice(CALC.length);
  return /^(?:schedules|drawings)\./u.test(of) ? { of, words: plainText(only).trim() } : undefined;
}

/**
 * A paragraph that is only a link to a schedule or a drawing becomes a mark that says which, so that it can be put in after
 * what the author wrote was sanitized. No author can write such a mark: raw HTML is dropped before.
 */
export const paragraph: Handler = (state, node) => {
  const found = figureOf(node);
  return found
    ? h("div", { dataFigure: found.of }, found.words)
    : defaultHandlers.paragraph(state, node as Parameters<typeof defaultHandlers.paragraph>[1]);
};

/** Table or drawing in place of every mark; where there is none, the author's words in a paragraph. */
export const withFigures = (nodes: readonly ElementContent[], figure: FigureFor): ElementContent[] =>
  nodes.map((node) => {
    if (node.type !== "element") return node;
    const { dataFigure } = node.properties;
    if (typeof dataFigure !== "string") return { ...node, children: withFigures(node.children, figure) };
    return figure(dataFigure, plainText(node)) ?? h("p", node.children);
  });
