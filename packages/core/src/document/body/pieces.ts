import type { Root, RootContent } from "mdast";
import { type MarkdownPoint, moved } from "./move.js";

/** Each but the first begins with a heading at the left margin: that ends whatever stands above it, */
const BEGINS = /(?<=\n)(?=#{1,6} )/u;
/** but for code between fences and HTML, which go on to an end of their own. */
const GOES_ON = /`{3}|~{3}|</u;
/** What a reference or a note means may be written anywhere. */
const REFERS = /\]:|[\uFEFF\0\r]/u;

/** A body in pieces that come to the same read one by one as read together. */
export function bodyPieces(body: string): readonly string[] {
  if (REFERS.test(body)) return [body];
  const pieces = body.split(BEGINS);
  const open = pieces.findIndex((piece) => GOES_ON.test(piece));
  return open < 0 ? pieces : [...pieces.slice(0, open), pieces.slice(open).join("")];
}

/** Pieces that are read, each from its own beginning on. */
export type KnownPieces = ReadonlyMap<string, Root>;

/**
 * Reads a body piece by piece, and no piece again that is known.
 * @param read how a piece is read
 */
export function readPieces(
  body: string,
  read: (piece: string) => Root,
  known: KnownPieces = new Map(),
): { readonly tree: Root; readonly pieces: KnownPieces } {
  const pieces = new Map<string, Root>();
  const children: RootContent[] = [];
  let [line, offset] = [0, 0];
  let end: MarkdownPoint = { line: 1, column: 1, offset: 0 };
  for (const piece of bodyPieces(body)) {
    const tree = pieces.get(piece) ?? known.get(piece) ?? read(piece);
    pieces.set(piece, tree);
    const here = moved(tree, line, offset);
    children.push(...here.children);
    end = here.position?.end ?? end;
    line += piece.split("\n").length - 1;
    offset += piece.length;
  }
  const tree: Root = { type: "root", children, position: { start: { line: 1, column: 1, offset: 0 }, end } };
  return { tree, pieces };
}
