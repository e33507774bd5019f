import type { Root, Yaml } from "mdast";
import remarkFrontmatter from "remark-frontmatter";
import remarkGfm from "remark-gfm";
import remarkParse from "remark-parse";
import { unified } from "unified";
import type { FrontMatter } from "../yaml/front-matter.js";
import { gfmHeld, gfmIn, mayHoldAddress } from "./gfm.js";
import { type MarkdownPoint, moved } from "./move.js";

type Parser = Pick<typeof bodies, "parse">;

const whole = unified().use(remarkParse).use(remarkFrontmatter, ["yaml"]).use(remarkGfm);
const bodies = unified().use(remarkParse).use(remarkGfm);
/** Parsers of bodies without addresses, by what else they may hold. */
const plainBodies = new Map<string, Parser>();

/** A body by itself. */
export const parseBody = (text: string): Root => parserFor(text).parse(text) as Root;

function parserFor(text: string): Parser {
  if (mayHoldAddress(text)) return bodies;
  const held = gfmIn(text);
  const parser = plainBodies.get(held) ?? unified().use(remarkParse).use(gfmHeld, held);
  plainBodies.set(held, parser);
  return parser;
}

/** The straightforward way: the Markdown parser reads everything, the front matter too. */
export const parseWhole = (text: string): Root => whole.parse(text) as Root;

/** Where the body begins: on the line below the closing fence. Undefined where nothing follows. */
function startOfBody(text: string, { to }: FrontMatter): MarkdownPoint | undefined {
  const fence = /---[ \t]*(\r\n|\n|\r)/gu;
  fence.lastIndex = to;
  const end = fence.exec(text);
  if (!end) return undefined;
  const offset = end.index + end[0].length;
  return { line: (text.slice(0, offset).match(/\r\n|\n|\r/gu)?.length ?? 0) + 1, column: 1, offset };
}

const yamlOf = (text: string, { from, to }: FrontMatter, body: MarkdownPoint): Yaml => {
  const fence = text.slice(to, body.offset).trimEnd();
  const blanks = text
    .slice(to, body.offset)
    .slice(fence.length)
    .replace(/[\r\n]+$/u, "");
  const end = { line: body.line - 1, column: 4 + blanks.length, offset: text.indexOf("---", to) + 3 + blanks.length };
  const position = { start: { line: 1, column: 1, offset: 0 }, end };
  return { type: "yaml", value: text.slice(from, to), position };
};

/**
 * The tree that `parseWhole` gives, in half the time: the Markdown parser would go through the front matter letter by
 * letter, and that is half of a build document. A property test holds both to the same tree with the same places.
 * @param read how the body is read
 */
export function parse(text: string, front: FrontMatter | undefined, read = parseBody): Root {
  const start = front && startOfBody(text, front);
  // The parser leaves a byte order mark out of its places, and puts another character for a zero.
  if (!start || /[\uFEFF\0]/u.test(text)) return parseWhole(text);
  const tree = moved(read(text.slice(start.offset)), start.line - 1, start.offset as number);
  tree.children.unshift(yamlOf(text, front, start));
  if (tree.position) tree.position.start = { line: 1, column: 1, offset: 0 };
  return tree;
}
