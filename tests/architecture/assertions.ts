import ts from "typescript-api";
import { bare, within } from "./sources.js";

/** Names of `expect` that only describe what is expected. */
const DESCRIBING = new Set(
  "any anything arrayContaining arrayOf objectContaining stringContaining stringMatching closeTo not extend getState".split(
    " ",
  ),
);

/** `expect(…)`, `expect.soft(…)`, `assert(…)`, `fc.assert(…)`. */
export function isAssertion({ expression }: ts.CallExpression): boolean {
  if (ts.isIdentifier(expression)) return /^(?:expect|assert|expectTypeOf|assertType)$/u.test(expression.text);
  if (!ts.isPropertyAccessExpression(expression) || !ts.isIdentifier(expression.expression)) return false;
  const [of, name] = [expression.expression.text, expression.name.text];
  return (of === "fc" && name === "assert") || of === "assert" || (of === "expect" && !DESCRIBING.has(name));
}

/** The matcher of an assertion: its name, whether it is turned round, and what it is given. */
function matcherOf(assertion: ts.CallExpression) {
  let [not, node]: [boolean, ts.Node] = [false, assertion.parent];
  while (ts.isPropertyAccessExpression(node)) {
    const name = node.name.text;
    const { parent } = node;
    if (ts.isCallExpression(parent)) return { name, not, given: parent.arguments[0] };
    not ||= name === "not";
    node = parent;
  }
  return undefined;
}

/** `[]`, `{}`, `0`, `""`: what is there when nothing is. */
function isNothing(given: ts.Expression | undefined): boolean {
  if (given === undefined) return true;
  const node = bare(given);
  if (ts.isArrayLiteralExpression(node)) return node.elements.length === 0;
  if (ts.isObjectLiteralExpression(node)) return node.properties.length === 0;
  if (ts.isIdentifier(node)) return node.text === "undefined";
  return /^(?:0|""|false|null)$/u.test(node.getText());
}

const SAME = new Set("toBe toEqual toStrictEqual toHaveLength".split(" "));
const MORE = new Set("toBeGreaterThan toContain toContainEqual toMatch toMatchObject toSatisfy".split(" "));

/** Whether an assertion about one of the names fails when there is nothing in it. */
export function covers(assertion: ts.CallExpression, names: ReadonlySet<string>): boolean {
  const [about] = assertion.arguments;
  if (!about || !within(about, ts.isIdentifier).some(({ text }) => names.has(text))) return false;
  const matcher = matcherOf(assertion);
  if (!matcher) return false;
  const { name, not, given } = matcher;
  if (SAME.has(name)) return not === isNothing(given);
  if (name === "toBeGreaterThanOrEqual") return !not && !isNothing(given);
  return !not && MORE.has(name);
}
