import ts from "typescript-api";
import { covers, isAssertion } from "./assertions.js";
import { isFull } from "./full.js";
import { bare, callbackOf, declarationOf, firstWord, isFunction, type Source, within } from "./sources.js";

/** A loop, or a list of cases, that asserts nothing when there is nothing in it, and nothing says that there is. */
export interface Hollow {
  readonly line: number;
  /** What is looped over, as it is written. */
  readonly over: string;
  readonly node: ts.Expression;
}

const TESTS = new Set(["test", "it"]);
const SUITES = new Set(["describe", "suite"]);
const ITERATING = new Set([..."forEach map flatMap every some filter find reduce".split(" ")]);

/** What a node goes through again and again: the list and what is done with each. */
interface Loop {
  readonly over: ts.Expression;
  readonly each: ts.Node;
}

function loopOf(node: ts.Node): Loop | undefined {
  if (ts.isForOfStatement(node) || ts.isForInStatement(node)) return { over: node.expression, each: node.statement };
  if (!ts.isCallExpression(node) || !ts.isPropertyAccessExpression(node.expression)) return undefined;
  const [each] = node.arguments;
  return ITERATING.has(node.expression.name.text) && isFunction(each)
    ? { over: node.expression.expression, each: each.body as ts.Node }
    : undefined;
}

/** What the assertions of a piece of code come to: those that are made whatever is found, and loops that may make none. */
interface Made {
  readonly sure: readonly ts.CallExpression[];
  readonly hollow: readonly Loop[];
}

const NONE: Made = { sure: [], hollow: [] };

/** Functions that are being looked at, so that one that calls itself is looked at once. */
type Open = ReadonlySet<ts.Node>;

/** A call whose value nobody takes: a helper called so for what it throws. */
const isStatement = ({ parent }: ts.Node): boolean =>
  ts.isExpressionStatement(parent) || (ts.isAwaitExpression(parent) && isStatement(parent));

/** Bodies of functions of which it is known whether they assert: many tests call the same ones. */
const known = new WeakMap<ts.Node, boolean>();

function assertsIn(body: ts.Node, source: Source, open: Open): boolean {
  const before = known.get(body);
  if (before !== undefined) return before;
  const does = madeIn(body, source, new Set([...open, body])).sure.length > 0;
  // One that does not may only not do so because a caller of it is being looked at.
  if (does || open.size === 0) known.set(body, does);
  return does;
}

/** Whether a function that is called asserts whatever it is given, or throws. */
function asserts(call: ts.CallExpression, name: ts.Identifier, source: Source, open: Open): boolean {
  const found = declarationOf(name, source);
  const body = found && isFunction(found.node) ? found.node.body : undefined;
  if (!found || !body || open.has(body)) return false;
  if (assertsIn(body, found.source, open)) return true;
  return isStatement(call) && within(body, ts.isThrowStatement).length > 0;
}

function madeIn(node: ts.Node, source: Source, open: Open = new Set()): Made {
  const loop = loopOf(node);
  if (loop) {
    const outside = ts.isCallExpression(node) ? madeIn(loop.over, source, open) : NONE;
    const inside = madeIn(loop.each, source, open);
    if (inside.sure.length === 0 || isFull(loop.over, source))
      return { sure: [...outside.sure, ...inside.sure], hollow: [...outside.hollow, ...inside.hollow] };
    return { sure: outside.sure, hollow: [...outside.hollow, loop, ...inside.hollow] };
  }
  const parts: Made[] = [];
  if (ts.isCallExpression(node)) {
    if (isAssertion(node)) parts.push({ sure: [node], hollow: [] });
    else if (ts.isIdentifier(node.expression) && asserts(node, node.expression, source, open))
      parts.push({ sure: [node], hollow: [] });
  }
  if (!(isFunction(node) && ts.isVariableDeclaration(node.parent)) && !ts.isFunctionDeclaration(node))
    ts.forEachChild(node, (child) => void parts.push(madeIn(child, source, open)));
  return { sure: parts.flatMap(({ sure }) => sure), hollow: parts.flatMap(({ hollow }) => hollow) };
}

/** Names a loop is accounted for by: the list it goes over, and whatever it counts or gathers. */
function accounts({ over, each }: Loop): ReadonlySet<string> {
  const names = within(over, ts.isIdentifier).map(({ text }) => text);
  const counted = within(
    each,
    (node): node is ts.Node => ts.isPostfixUnaryExpression(node) || ts.isBinaryExpression(node),
  ).flatMap((node) =>
    ts.isPostfixUnaryExpression(node)
      ? [node.operand]
      : ts.isBinaryExpression(node) && /^[^=!<>]?=$/u.test(node.operatorToken.getText())
        ? [node.left]
        : [],
  );
  const gathered = within(each, ts.isCallExpression).flatMap(({ expression }) =>
    ts.isPropertyAccessExpression(expression) && /^(?:push|add|set)$/u.test(expression.name.text)
      ? [expression.expression]
      : [],
  );
  return new Set([...names, ...[...counted, ...gathered].filter(ts.isIdentifier).map(({ text }) => text)]);
}

const reported = (node: ts.Expression, source: Source): Hollow => ({
  line: source.file.getLineAndCharacterOfPosition(node.getStart(source.file)).line + 1,
  over: node.getText(source.file),
  node,
});

/** Loops of a test that nothing accounts for. */
function ofTest(body: ts.Node, source: Source): readonly Hollow[] {
  const { sure, hollow } = madeIn(body, source);
  return hollow
    .filter((loop) => {
      const names = accounts(loop);
      return !sure.some((assertion) => covers(assertion, names));
    })
    .map(({ over }) => reported(over, source));
}

/** The list of `test.each(list)` and of `describe.each(list)`. */
function casesOf(node: ts.CallExpression): ts.Expression | undefined {
  const { expression } = node;
  if (!ts.isPropertyAccessExpression(expression) || expression.name.text !== "each") return undefined;
  const word = firstWord(expression);
  return TESTS.has(word) || SUITES.has(word) ? node.arguments[0] : undefined;
}

const isTest = (node: ts.CallExpression): boolean =>
  TESTS.has(firstWord(node.expression)) &&
  !(ts.isPropertyAccessExpression(node.expression) && node.expression.name.text === "each");

/** Every loop and list of cases of a file of tests that passes by being empty. */
export function hollowLoops(source: Source): readonly Hollow[] {
  const calls = within(source.file, ts.isCallExpression);
  const bodies = calls.filter(isTest).flatMap((call) => callbackOf(call)?.body ?? []);
  const said = bodies.flatMap((body) => madeIn(body, source).sure);
  const named = (list: ts.Expression): boolean => {
    const names = new Set(within(list, ts.isIdentifier).map(({ text }) => text));
    return said.some((assertion) => covers(assertion, names));
  };
  const cases = calls.flatMap((call) => casesOf(call) ?? []);
  const around = within(source.file, (node): node is ts.Node => loopOf(node) !== undefined)
    .map((node) => loopOf(node) as Loop)
    .filter(({ each }) => within(each, ts.isCallExpression).some(isTest))
    .map(({ over }) => over);
  const lists = [...cases, ...around].filter((list) => !isFull(bare(list), source) && !named(list));
  return [...bodies.flatMap((body) => ofTest(body, source)), ...lists.map((list) => reported(list, source))].sort(
    (one, other) => one.line - other.line,
  );
}
