import type { Element, ElementContent } from "hast";

const LEAST = 3;
const DEEPEST = 6;

const textOf = (node: ElementContent): string =>
  node.type === "text" ? node.value : node.type === "element" ? node.children.map(textOf).join("") : "";

const levelOf = (node: ElementContent): number | undefined =>
  node.type === "element" && /^h[1-6]$/u.test(node.tagName) ? Number(node.tagName[1]) : undefined;

const setLevels = (nodes: readonly ElementContent[], last: { level: number }): ElementContent[] =>
  nodes.map((node) => {
    if (node.type !== "element") return node;
    const level = levelOf(node);
    if (level === undefined) return { ...node, children: setLevels(node.children, last) };
    // An empty heading is announced and says nothing.
    if (textOf(node).trim() === "") return { ...node, tagName: "p" };
    last.level = Math.min(Math.max(level + 1, LEAST), last.level + 1, DEEPEST);
    return { ...node, tagName: `h${last.level}` };
  });

/** Headings below the page's own, in order and without a level left out, whatever the author wrote. */
export function headings(nodes: readonly ElementContent[], title: string): readonly ElementContent[] {
  const first = nodes.find((node): node is Element => node.type === "element");
  const repeats = first !== undefined && levelOf(first) === 1 && textOf(first).trim() === title;
  return setLevels(repeats ? nodes.filter((node) => node !== first) : nodes, { level: LEAST - 1 });
}
