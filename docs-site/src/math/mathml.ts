import type { Element } from "hast";
import { findElement, h } from "../html/html.js";
import { type Expression, expressionOf } from "./expression.js";

/** A symbol with what it ends in below the line: `V1`, `Imax`, `M_o`. Words and all capitals stand as they are. */
function name(text: string): Element {
  const [, letters, below] =
    /^(\p{L}+?)_?(\p{Nd}+)$|^(\p{Lu})_?(\p{Ll}+)$|^([mx])([bs])$|^(k)([an])$/u
      .exec(text)
      ?.filter((each) => each !== undefined) ?? [];
  return letters === undefined || below === undefined
    ? h("mi", text)
    : h("msub", [h("mi", letters), h("mtext", below)]);
}

/** Brackets around what a fraction bar or a root already holds together are left out. */
const bare = (expression: Expression): Element => set(expression.is === "brackets" ? expression.of : expression);

/**
 * Brackets are as high as a fraction or root within them, and no higher: an engine makes them as long below the middle of
 * the line as above it, and a power stands at their top.
 */
function bracketed(...content: readonly Element[]): Element {
  const high = findElement(content, ({ tagName }) => tagName === "mfrac" || tagName === "msqrt") !== undefined;
  const bracket = (each: string): Element => h("mo", high ? { symmetric: "false" } : { stretchy: "false" }, each);
  return h("mrow", [bracket("("), ...content, bracket(")")]);
}

const withCommas = (all: readonly Element[]): readonly Element[] =>
  all.flatMap((each, index) => (index === 0 ? [each] : [h("mo", ","), each]));

/** A sign between two things has room at both sides, whatever font sets it; a minus before the first has none. */
const sign = (each: string, index: number): Element =>
  index === 0 ? h("mo", each) : h("mo", { lspace: "0.3em", rspace: "0.3em" }, each);

const row = (of: readonly (Expression | string)[]): Element =>
  h(
    "mrow",
    of.map((each, index) =>
      typeof each === "string"
        ? each.trim() === ""
          ? h("mspace", { width: "0.17em" })
          : sign(each, index)
        : set(each),
    ),
  );

function set(expression: Expression): Element {
  switch (expression.is) {
    case "number":
      return h("mn", expression.text);
    case "unit":
      return h("mtext", expression.text);
    case "name":
      return name(expression.text);
    case "row":
      return row(expression.of);
    case "fraction":
      return h("mfrac", [bare(expression.over), bare(expression.under)]);
    case "power":
      return h("msup", [set(expression.base), set(expression.to)]);
    case "root":
      return h("msqrt", set(expression.of));
    case "total":
      return h("mrow", [h("mo", "∑"), set(expression.of)]);
    case "brackets":
      return bracketed(set(expression.of));
    case "function":
      return h("mrow", [h("mi", expression.name), bracketed(...withCommas(expression.of.map(set)))]);
  }
}

/** One symbol as it stands in a formula. */
export const symbolMath = (symbol: string): Element => h("math", name(symbol));

/** A phone shows so many letters of a formula; a longer one may scroll there, which keys have to reach too. */
const MOST = 12;

/** A formula such as `I = S ÷ V` set as in a handbook; as it is written where it cannot be read. */
export function formulaMath(symbol: string, expression: string): Element {
  const tree = expressionOf(expression);
  if (!tree) return h("code", `${symbol} = ${expression}`);
  const long = symbol.length + expression.replace(/\s/gu, "").length > MOST;
  return h(
    "math",
    { display: "block", ...(long ? { tabindex: 0 } : {}) },
    h("mrow", [name(symbol), h("mo", "="), set(tree)]),
  );
}
