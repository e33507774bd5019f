import type { Element, Nodes } from "xast";
import { fromXml } from "xast-util-from-xml";

/** A drawing read back from its file with a general XML parser; it throws where the XML is not well formed. */
export interface Read {
  readonly root: Element;
  readonly all: (name?: string) => readonly Element[];
  /** Elements that have an attribute, with its value. */
  readonly having: (attribute: string) => readonly (readonly [string, Element])[];
}

const under = (node: Nodes): readonly Element[] =>
  node.type === "element" || node.type === "root"
    ? [...(node.type === "element" ? [node] : []), ...node.children.flatMap((each) => under(each as Nodes))]
    : [];

const known = new Map<string, Read>();

/** What is read once is kept: many tests look at the same drawings. */
export function read(text: string): Read {
  if (known.size > 500) known.clear();
  const found = known.get(text) ?? parsed(text);
  known.set(text, found);
  return found;
}

const parsed = (text: string): Read => readTree(fromXml(text));

/** A drawing as a tree, with what an XML parser would find in its file. */
export function readTree(tree: Nodes): Read {
  const elements = under(tree);
  return {
    root: elements[0] as Element,
    all: (name) => elements.filter((each) => name === undefined || each.name === name),
    having: (attribute) =>
      elements.flatMap((each) => {
        const value = each.attributes[attribute];
        return value === undefined || value === null ? [] : [[value, each] as const];
      }),
  };
}

export const number = (element: Element | undefined, attribute: string): number =>
  Number(element?.attributes[attribute]);

export const words = (element: Element): string =>
  element.children
    .map((each) => (each.type === "text" ? each.value : each.type === "element" ? words(each) : ""))
    .join("");
