import { plainText, scheduleNamed } from "@plumbmark/core";
import type { ElementContent } from "hast";
import { h } from "hastscript";
import { defaultHandlers, type Handler } from "mdast-util-to-hast";

/** The table a link to a schedule stands for; undefined when there is no such schedule. */
export type Schedule = (name: string, words: string) => ElementContent | undefined;

interface Node {
  readonly type: string;
  readonly url?: string;
  readonly value?: string;
  readonly children?: readonly Node[];
}

/** The one link a paragraph consists of, if it is one to a schedule. */
function scheduleOf({ children = [] }: Node): { readonly name: string; readonly words: string } | undefined {
  const [only, ...more] = children.filter(({ type, value }) => type !== "text" || value?.trim() !== "");
  if (only?.type !== "link" || more.length > 0 || !only.url?.startsWith("calc:")) return undefined;
  const name = scheduleNamed(only.url.slice("calc:".length));
  return name === undefined ? undefined : { name, words: plainText(only).trim() };
}

/**
 * A paragraph that is only a link to a schedule becomes a mark that says which, so that the table can be put in after
 * what the author wrote was sanitized. No author can write such a mark: raw HTML is dropped before.
 */
export const paragraph: Handler = (state, node) => {
  const found = scheduleOf(node);
  return found
    ? h("div", { dataSchedule: found.name }, found.words)
    : defaultHandlers.paragraph(state, node as Parameters<typeof defaultHandlers.paragraph>[1]);
};

/** The table in place of every mark; where there is none, the author's words in a paragraph. */
export const withSchedules = (nodes: readonly ElementContent[], schedule: Schedule): ElementContent[] =>
  nodes.map((node) => {
    if (node.type !== "element") return node;
    const { dataSchedule } = node.properties;
    if (typeof dataSchedule !== "string") return { ...node, children: withSchedules(node.children, schedule) };
    return schedule(dataSchedule, plainText(node)) ?? h("p", node.children);
  });
