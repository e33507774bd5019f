import { readdirSync, readFileSync } from "node:fs";
import ts from "typescript-api";

const source = new URL("../../packages/calc/src/", import.meta.url).pathname;

const filesIn = (folder: string): readonly string[] =>
  readdirSync(`${source}${folder}`, { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}${entry.name}`;
    if (entry.isDirectory()) return path === "register" || path === "sources" ? [] : filesIn(`${path}/`);
    return path.endsWith(".ts") ? [path] : [];
  });

/** Figures that are written outside functions and formulas: those that a table or a limit is made of. */
function holdsFigures(node: ts.Node): boolean {
  if (ts.isNumericLiteral(node)) return true;
  if (ts.isFunctionLike(node) || ts.isStringLiteral(node)) return false;
  if (ts.isCallExpression(node) && ts.isIdentifier(node.expression) && node.expression.text === "formula") return false;
  return ts.forEachChild(node, (child) => holdsFigures(child) || undefined) ?? false;
}

/** Constants of the package that hold figures, as `path#name`. */
export function constantsWithFigures(): readonly string[] {
  return filesIn("").flatMap((path) => {
    const file = ts.createSourceFile(path, readFileSync(`${source}${path}`, "utf8"), ts.ScriptTarget.Latest, true);
    return file.statements
      .filter(ts.isVariableStatement)
      .flatMap((statement) =>
        statement.declarationList.declarations
          .filter(({ initializer }) => initializer && holdsFigures(initializer))
          .map(({ name }) => `${path}#${name.getText()}`),
      );
  });
}

/** What the lists of tables take their data from. */
export const tableText = (): string =>
  readdirSync(`${source}register/tables`)
    .map((name) => readFileSync(`${source}register/tables/${name}`, "utf8"))
    .join("\n");
