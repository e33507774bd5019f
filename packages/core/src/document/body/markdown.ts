import type { Root } from "mdast";
import type { Mistake } from "../mistake.js";
import { type FrontMatter, frontMatterOf } from "../yaml/front-matter.js";
import { parse, parseBody } from "./parse.js";
import { type KnownPieces, readPieces } from "./pieces.js";
import { skeletonOf } from "./skeleton.js";
import { tooDeep } from "./too-deep.js";

/** A Markdown file taken apart: where its front matter stands, and what its body is. */
export interface Markdown {
  readonly text: string;
  /** The body; read when it is asked for. */
  readonly tree: Root;
  /** Its headings and links at their places and little else: all that most rules look at, for a third of the time. */
  readonly skeleton: Root;
  /** Whether the skeleton is the tree itself. */
  readonly whole: boolean;
  /** Why the body was not read. */
  readonly refused?: Mistake;
  /** Pieces of the body of which the skeleton is made; read with it. */
  readonly pieces: KnownPieces;
  /** Offsets of the YAML between the fences; undefined without front matter. */
  readonly frontMatter?: FrontMatter;
}

const linesIn = (text: string): number => text.match(/\r\n|\n|\r/gu)?.length ?? 0;

/** The skeleton of a piece of a body. */
const skeletonIn = (piece: string): Root => parseBody(skeletonOf(piece));

const NONE: KnownPieces = new Map();

/**
 * @param prose whether the whole body is going to be asked for
 * @param before how the text was read before it was changed: what did not change is not read again
 */
export function readMarkdown(text: string, prose = false, before?: Markdown): Markdown {
  const front = frontMatterOf(text);
  const refused = tooDeep(text, front ? linesIn(text.slice(0, front.to)) + 1 : 0);
  // The front matter is read all the same.
  const read = refused ? text.slice(0, front ? text.indexOf("---", front.to) + 3 : 0) : text;
  const known = { text, whole: prose, ...(refused ? { refused } : {}), ...(front ? { frontMatter: front } : {}) };
  let tree: Root | undefined;
  let skeleton: Root | undefined;
  let pieces = before?.pieces ?? NONE;
  if (prose) {
    tree = parse(read, front);
    return { ...known, tree, skeleton: tree, pieces };
  }
  const readBody = (body: string): Root => {
    const found = readPieces(body, skeletonIn, pieces);
    pieces = found.pieces;
    return found.tree;
  };
  return {
    ...known,
    get tree() {
      tree ??= parse(read, front);
      return tree;
    },
    get skeleton() {
      skeleton ??= tree ?? parse(read, front, readBody);
      return skeleton;
    },
    get pieces() {
      return pieces;
    },
  };
}

/** Text of a node and everything in it. */
export const plainText = (node: { readonly type: string }): string => {
  const { value, children } = node as { value?: string; children?: { type: string }[] };
  return value ?? children?.map(plainText).join("") ?? "";
};
