import type { Element, ElementContent, Properties, Root } from "hast";
import { toHtml } from "hast-util-to-html";
import { toXast } from "hast-util-to-xast";
import { h as element } from "hastscript";
import { toXml } from "xast-util-to-xml";

/** What stands in an element: elements, words, lists of them, or nothing. */
export type Content = ElementContent | string | undefined | readonly Content[];

type Value = string | number | boolean | undefined | readonly string[];

/** Attributes by name, `ariaLabel` for `aria-label`; one that is undefined or false is left out. */
export type Attributes = Readonly<Record<string, Value>>;

/** Hundredths of a millimetre are finer than any printer. */
export const num = (value: number): number => Math.round(value * 100) / 100 || 0;

/** Content as the children of an element. */
export function childrenOf(content: Content): ElementContent[] {
  if (content === undefined || content === "") return [];
  if (typeof content === "string") return [{ type: "text", value: content }];
  return Array.isArray(content) ? content.flatMap(childrenOf) : [content as ElementContent];
}

const isContent = (some: Attributes | Content): some is Content =>
  typeof some !== "object" || Array.isArray(some) || "children" in some;

const NONE: Attributes = {};

/** An element of HTML, with attributes and content or with content alone. Names are ours, never an author's. */
export function h(name: string, first?: Attributes | Content, second?: Content): Element {
  const [attributes, content] = isContent(first) ? [NONE, first] : [first ?? NONE, second];
  const made = element(name, attributes as Properties);
  made.children = childrenOf(content);
  return made;
}

const rounded = (name: string, value: Value): Value =>
  typeof value === "number" && !name.startsWith("data") ? num(value) : value;

/**
 * An element of SVG; measures are rounded, what a figure means (`data-`) is not. A drawing has thousands of them, and
 * their attributes are written as hast names properties: nothing is looked up.
 */
export function s(name: string, attributes: Attributes, content?: Content): Element {
  const properties: Properties = {};
  for (const key in attributes) {
    const value = attributes[key];
    if (value !== undefined && value !== false) properties[key] = rounded(key, value) as Properties[string];
  }
  return { type: "element", tagName: name, properties, children: childrenOf(content) };
}

/** The first element within some content, itself included, that is asked for. */
export function findElement(content: Content, asked: (element: Element) => boolean): Element | undefined {
  for (const node of childrenOf(content)) {
    if (node.type !== "element") continue;
    const found = asked(node) ? node : findElement(node.children, asked);
    if (found) return found;
  }
  return undefined;
}

/** Content as HTML. */
export const htmlText = (content: Content): string => toHtml({ type: "root", children: childrenOf(content) });

/** A whole page as HTML, from its root element. */
export const pageText = (html: Element): string => {
  const root: Root = { type: "root", children: [{ type: "doctype" }, html, { type: "text", value: "\n" }] };
  return toHtml(root, { upperDoctype: true });
};

/** A root element of SVG as a file of its own, well-formed XML. */
export const xmlText = (svg: Element): string => {
  const tree = toXast(svg, { space: "svg" });
  return `<?xml version="1.0" encoding="UTF-8"?>\n${toXml(tree, { closeEmptyElements: true })}\n`;
};
