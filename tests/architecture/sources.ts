import { existsSync, readFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import ts from "typescript-api";

/** A file read for its form; what it imports from other files of the workspace is read when it is asked for. */
export interface Source {
  readonly path: string;
  readonly file: ts.SourceFile;
}

const parse = (path: string, text: string): Source => ({
  path,
  file: ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true),
});

const read = new Map<string, Source | undefined>();

export function sourceAt(path: string): Source | undefined {
  if (!read.has(path)) read.set(path, existsSync(path) ? parse(path, readFileSync(path, "utf8")) : undefined);
  return read.get(path);
}

export const sourceOf = (text: string, path = "/none/a.test.ts"): Source => parse(path, text);

export type Callback = ts.ArrowFunction | ts.FunctionExpression | ts.FunctionDeclaration;

export const isFunction = (node: ts.Node | undefined): node is Callback =>
  node !== undefined && (ts.isArrowFunction(node) || ts.isFunctionExpression(node) || ts.isFunctionDeclaration(node));

/** Without brackets, assertions of type and `await`. */
export const bare = (node: ts.Expression): ts.Expression =>
  ts.isParenthesizedExpression(node) ||
  ts.isAsExpression(node) ||
  ts.isSatisfiesExpression(node) ||
  ts.isNonNullExpression(node) ||
  ts.isAwaitExpression(node)
    ? bare(node.expression)
    : node;

/** `test` of `test.each(cases)("…", () => …)`: the first word of what is called. */
export const firstWord = (node: ts.Expression): string => {
  if (ts.isIdentifier(node)) return node.text;
  return ts.isPropertyAccessExpression(node) || ts.isCallExpression(node) ? firstWord(node.expression) : "";
};

/** The function a call is given, if it is given one. */
export const callbackOf = (call: ts.CallExpression): Callback | undefined =>
  call.arguments.find((each): each is ts.ArrowFunction | ts.FunctionExpression => isFunction(each));

/** Everything of one kind in a node, itself too. */
export function within<T extends ts.Node>(node: ts.Node, is: (each: ts.Node) => each is T): readonly T[] {
  const found: T[] = [];
  const visit = (each: ts.Node): void => {
    if (is(each)) found.push(each);
    ts.forEachChild(each, visit);
  };
  visit(node);
  return found;
}

/** What a name stands for, and the source it stands in. */
export interface Declared {
  /** A function, or the expression a constant begins with. */
  readonly node: ts.Node;
  readonly source: Source;
}

const binds = (name: ts.BindingName, text: string): boolean =>
  ts.isIdentifier(name)
    ? name.text === text
    : name.elements.some((each) => ts.isBindingElement(each) && binds(each.name, text));

/** Declared among some statements: its function or beginning; null for what is taken apart from something else. */
function among(statements: readonly ts.Statement[], text: string): ts.Node | null | undefined {
  for (const each of statements) {
    if (ts.isFunctionDeclaration(each) && each.name?.text === text) return each;
    if (!ts.isVariableStatement(each)) continue;
    for (const { name, initializer } of each.declarationList.declarations)
      if (binds(name, text)) return ts.isIdentifier(name) ? (initializer ?? null) : null;
  }
  return undefined;
}

function imported(name: string, { file, path }: Source): Declared | undefined {
  for (const each of file.statements) {
    if (!ts.isImportDeclaration(each) || !ts.isStringLiteral(each.moduleSpecifier)) continue;
    const names = each.importClause?.namedBindings;
    const own = names && ts.isNamedImports(names) ? names.elements.find((one) => one.name.text === name) : undefined;
    if (!own || !each.moduleSpecifier.text.startsWith(".")) continue;
    const source = sourceAt(resolve(dirname(path), each.moduleSpecifier.text).replace(/\.js$/u, ".ts"));
    const node = source && among(source.file.statements, (own.propertyName ?? own.name).text);
    return node ? { node, source } : undefined;
  }
  return undefined;
}

/** Looks a name up from where it stands outwards; undefined for parameters, for what varies and for what is not here. */
export function declarationOf(name: ts.Identifier, source: Source): Declared | undefined {
  for (let node: ts.Node | undefined = name.parent; node; node = node.parent) {
    if (ts.isFunctionLike(node) && node.parameters.some((each) => binds(each.name, name.text))) return undefined;
    if (ts.isForOfStatement(node) && ts.isVariableDeclarationList(node.initializer))
      if (node.initializer.declarations.some((each) => binds(each.name, name.text))) return undefined;
    if (!ts.isBlock(node) && !ts.isSourceFile(node)) continue;
    const found = among(node.statements, name.text);
    if (found === null) return undefined;
    if (found) return { node: found, source };
  }
  return imported(name.text, source);
}
