import type { Node } from "mdast";

/** A place of a node of Markdown. */
export type MarkdownPoint = NonNullable<Node["position"]>["start"];

type Located = Node & { readonly children?: readonly Located[] };

/** A copy of a tree that stands further down in a text. */
export function moved<Tree extends Located>(tree: Tree, lines: number, by: number): Tree {
  const point = ({ line, column, offset = 0 }: MarkdownPoint): MarkdownPoint => ({
    line: line + lines,
    column,
    offset: offset + by,
  });
  const { position, children } = tree;
  return {
    ...tree,
    ...(position ? { position: { start: point(position.start), end: point(position.end) } } : {}),
    ...(children ? { children: children.map((child) => moved(child, lines, by)) } : {}),
  };
}
