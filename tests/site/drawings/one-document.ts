import { type Drawing, drawingsOf, svg, svgFile } from "@plumbmark/docs-site";
import { toXast } from "hast-util-to-xast";
import type { Element } from "xast";
import { type Read, readTree } from "./read.js";
import { inspected } from "./repository.js";

export interface Drawn {
  readonly name: string;
  readonly file: string;
  readonly drawing: Drawing;
  /** As it is written to its file. */
  readonly text: string;
  /** The tree of that file, without writing it and reading it back. */
  readonly read: Read;
}

/** The tree of a drawing's file. */
export const treeOf = (drawing: Drawing): Read =>
  readTree(toXast(svg(drawing, "Drawing"), { space: "svg" }) as Element);

/** What is asked for is made then, and once. */
function drawnFrom(file: string, drawing: Drawing): Drawn {
  let text: string | undefined;
  let read: Read | undefined;
  return {
    ...{ name: `${file} ${drawing.name}`, file, drawing },
    get text() {
      text ??= svgFile(drawing);
      return text;
    },
    get read() {
      read ??= treeOf(drawing);
      return read;
    },
  };
}

const made = new Map<string, readonly Drawn[]>();

/** The drawings of one document; the other documents are not looked at. */
export function drawnOf(file: string): readonly Drawn[] {
  const own = made.get(file) ?? drawingsOf(inspected(file)).map((drawing) => drawnFrom(file, drawing));
  made.set(file, own);
  return own;
}
