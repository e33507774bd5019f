import type { ListItem, Root } from "mdast";
import { plainText } from "./markdown.js";
import { type Place, START } from "./place.js";

/** One line of a task list: `- [ ] Bar hung and level`. */
export interface Task {
  readonly text: string;
  readonly done: boolean;
  readonly place: Place;
}

/** Every task of the body, nested ones included. */
export function tasksOf(tree: Root): readonly Task[] {
  const tasks: Task[] = [];
  const visit = (node: { readonly type: string; readonly children?: readonly { type: string }[] }): void => {
    const { checked, position, children } = node as ListItem;
    if (node.type === "listItem" && typeof checked === "boolean") {
      const place = position
        ? {
            line: position.start.line,
            column: position.start.column,
            endLine: position.end.line,
            endColumn: position.end.column,
          }
        : START;
      // Tasks below it are tasks of their own; only its first paragraph is its text.
      tasks.push({ text: children[0] ? plainText(children[0]).trim() : "", done: checked, place });
    }
    for (const child of node.children ?? []) visit(child);
  };
  visit(tree);
  return tasks;
}
