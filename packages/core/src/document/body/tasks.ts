import type { ListItem, Root } from "mdast";
import { type Place, type Positioned, placeOfNode } from "../place.js";
import { plainText } from "./markdown.js";

/** One line of a task list: `- [ ] Bar hung and level`. */
export interface Task {
  readonly text: string;
  readonly done: boolean;
  readonly place: Place;
}

/** Every task of the body, nested ones included. */
export function tasksOf(tree: Root): readonly Task[] {
  const tasks: Task[] = [];
  const visit = (
    node: Positioned & { readonly type: string; readonly children?: readonly { type: string }[] },
  ): void => {
    const { checked, children } = node as ListItem;
    if (node.type === "listItem" && typeof checked === "boolean") {
      // Tasks below it are tasks of their own; only its first paragraph is its text.
      tasks.push({ text: children[0] ? plainText(children[0]).trim() : "", done: checked, place: placeOfNode(node) });
    }
    for (const child of node.children ?? []) visit(child);
  };
  visit(tree);
  return tasks;
}
