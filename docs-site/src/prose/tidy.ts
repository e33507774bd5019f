import type { Element, ElementContent, Properties } from "hast";
import { h } from "hastscript";
import type { Replacements } from "./prose.js";

const isOutward = (href: string): boolean => /^(?:https?:|mailto:|#)/iu.test(href);

const CALC = "calc:";

/** A link that leads nowhere on the site keeps its words and loses its link; a quoted figure shows its working. */
function link(node: Element, children: ElementContent[], { link: resolve, quote }: Replacements): ElementContent {
  const { href } = node.properties;
  if (typeof href !== "string") return h("span", children);
  const quoted = href.startsWith(CALC) ? quote(href.slice(CALC.length), children) : undefined;
  if (quoted) return quoted;
  const target = isOutward(href) ? href : resolve(href);
  return target === undefined
    ? h("span", children)
    : { ...node, properties: { ...node.properties, href: target }, children };
}

/** A picture of the repository; in place of any other stands what it shows, for a page needs nothing from elsewhere. */
function image({ properties: { src, alt }, position }: Element, { picture }: Replacements): ElementContent {
  const words = typeof alt === "string" && alt !== "" ? alt : "picture";
  // What leads elsewhere has lost its address when it was sanitized.
  return picture(typeof src === "string" ? src : "", words, position?.start) ?? h("span", `[${words}]`);
}

const empty = (node: Element): boolean => node.children.length === 0;

/** Alignment as a class and headers with their scope, as HTML asks today; an empty header is no header. */
function cell(node: Element, children: ElementContent[]): ElementContent {
  const { align, ...rest } = node.properties;
  const properties: Properties = { ...rest, ...(typeof align === "string" ? { className: [`at-${align}`] } : {}) };
  const header = node.tagName === "th" && !empty(node);
  return {
    ...node,
    tagName: header ? "th" : "td",
    properties: header ? { ...properties, scope: "col" } : properties,
    children,
  };
}

const isBare = (node: ElementContent): boolean =>
  node.type === "element"
    ? node.tagName !== "img" && node.children.every(isBare)
    : node.type === "text" && node.value.trim() === "";

function element(node: Element, ids: Set<string>, named: Replacements): ElementContent {
  // Markdown has no table without a header row; one that says nothing is left out.
  const kept = node.children.filter((each) => !(each.type === "element" && each.tagName === "thead" && isBare(each)));
  const children = tidyAll(kept, ids, named);
  if (node.tagName === "a") return link(node, children, named);
  if (node.tagName === "th" || node.tagName === "td") return cell(node, children);
  // A box to tick on paper; it cannot be ticked on the page.
  if (node.tagName === "input") return { type: "text", value: node.properties.checked ? "☑" : "☐" };
  if (node.tagName === "img") return image(node, named);
  // A table wider than a phone scrolls by itself; which one it is, is told by its place in the document.
  if (node.tagName === "table")
    return h("section", { class: "wide", tabIndex: 0, ariaLabel: nextTable(ids) }, [{ ...node, children }]);
  return { ...node, children };
}

function nextTable(ids: Set<string>): string {
  let number = 1;
  while (ids.has(`Table ${number}`)) number += 1;
  ids.add(`Table ${number}`);
  return `Table ${number} of the document`;
}

function tidyAll(nodes: readonly ElementContent[], ids: Set<string>, named: Replacements): ElementContent[] {
  return nodes.map((node) => {
    if (node.type !== "element") return node;
    const { id, ...rest } = node.properties;
    if (id === undefined) return element(node, ids, named);
    // Two headings of one name, or a footnote called like a heading: the first keeps the id.
    const repeated = ids.has(String(id));
    ids.add(String(id));
    return element(repeated ? { ...node, properties: rest } : node, ids, named);
  });
}

export const tidy = (nodes: readonly ElementContent[], named: Replacements): ElementContent[] =>
  tidyAll(nodes, new Set(), named);
