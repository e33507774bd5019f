import type { Element, ElementContent, Properties } from "hast";
import { h } from "hastscript";
import type { Resolve } from "./prose.js";

const isOutward = (href: string): boolean => /^(?:https?:|mailto:|#)/iu.test(href);

/** A link that leads nowhere on the site keeps its words and loses its link. */
function link(node: Element, children: ElementContent[], resolve: Resolve): ElementContent {
  const { href } = node.properties;
  if (typeof href !== "string") return h("span", children);
  const target = isOutward(href) ? href : resolve(href);
  return target === undefined
    ? h("span", children)
    : { ...node, properties: { ...node.properties, href: target }, children };
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

function element(node: Element, ids: Set<string>, resolve: Resolve): ElementContent {
  // Markdown has no table without a header row; one that says nothing is left out.
  const kept = node.children.filter((each) => !(each.type === "element" && each.tagName === "thead" && isBare(each)));
  const children = tidyAll(kept, ids, resolve);
  if (node.tagName === "a") return link(node, children, resolve);
  if (node.tagName === "th" || node.tagName === "td") return cell(node, children);
  // A box to tick on paper; it cannot be ticked on the page.
  if (node.tagName === "input") return { type: "text", value: node.properties.checked ? "☑" : "☐" };
  // A page needs nothing from elsewhere: in place of a picture stands what it shows.
  if (node.tagName === "img") return h("span", `[${node.properties.alt || "picture"}]`);
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

function tidyAll(nodes: readonly ElementContent[], ids: Set<string>, resolve: Resolve): ElementContent[] {
  return nodes.map((node) => {
    if (node.type !== "element") return node;
    const { id, ...rest } = node.properties;
    if (id === undefined) return element(node, ids, resolve);
    // Two headings of one name, or a footnote called like a heading: the first keeps the id.
    const repeated = ids.has(String(id));
    ids.add(String(id));
    return element(repeated ? { ...node, properties: rest } : node, ids, resolve);
  });
}

export const tidy = (nodes: readonly ElementContent[], resolve: Resolve): ElementContent[] =>
  tidyAll(nodes, new Set(), resolve);
