import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import ts from "typescript-api";

/** Root of the repository, with a slash at its end. */
export const ROOT = new URL("../..", import.meta.url).pathname;

const LEFT_OUT = new Set(["node_modules", "dist", "generated"]);

/** The packages in the order they may import: each only what stands before it and is named here. */
export const PACKAGES: readonly {
  readonly name: string;
  readonly folder: string;
  readonly before: readonly string[];
  /** Whether it imports nothing of Node.js, so that it runs in a browser. */
  readonly pure: boolean;
}[] = [
  { name: "@plumbmark/in-place", folder: "packages/in-place/src", before: [], pure: false },
  { name: "@plumbmark/calc", folder: "packages/calc/src", before: [], pure: true },
  { name: "@plumbmark/core", folder: "packages/core/src", before: ["calc"], pure: true },
  { name: "@plumbmark/kit", folder: "packages/kit/src", before: ["calc", "core"], pure: true },
  { name: "@plumbmark/rules", folder: "rules", before: ["calc", "kit"], pure: true },
  { name: "@plumbmark/draft", folder: "packages/draft/src", before: ["calc", "core", "kit", "rules"], pure: true },
  {
    name: "@plumbmark/docs-site",
    folder: "docs-site/src",
    before: ["in-place", "calc", "core", "kit", "rules", "draft"],
    pure: false,
  },
  {
    name: "@plumbmark/editor",
    folder: "packages/editor/src",
    before: ["calc", "core", "kit", "rules", "draft"],
    pure: false,
  },
  { name: "@plumbmark/starter", folder: "packages/starter/src", before: ["calc", "core", "kit", "rules"], pure: false },
  {
    name: "@plumbmark/cli",
    folder: "packages/cli/src",
    before: ["in-place", "calc", "core", "kit", "rules", "draft", "docs-site", "editor", "starter"],
    pure: false,
  },
];

/** Every TypeScript source under a folder, tests and declarations apart, by its path from the root. */
export function sourcesUnder(folder: string): readonly string[] {
  if (!existsSync(join(ROOT, folder))) return [];
  const found = readdirSync(join(ROOT, folder), { withFileTypes: true }).flatMap((entry) => {
    if (LEFT_OUT.has(entry.name)) return [];
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return sourcesUnder(path);
    return /(?<!\.d|\.test)\.ts$/u.test(entry.name) ? [path] : [];
  });
  return [...found].sort();
}

/** What one source imports and declares. */
export interface Source {
  readonly path: string;
  /** Modules it takes values from, at run time too. */
  readonly values: readonly string[];
  /** Modules it takes types from only: they are not there when it runs. */
  readonly types: readonly string[];
  /** Names it declares and exports. */
  readonly exports: readonly string[];
}

const isTypeOnly = (statement: ts.ImportDeclaration | ts.ExportDeclaration): boolean => {
  if (ts.isImportDeclaration(statement)) {
    const clause = statement.importClause;
    if (clause?.isTypeOnly) return true;
    const named = clause?.namedBindings;
    return !!named && ts.isNamedImports(named) && !clause.name && named.elements.every((each) => each.isTypeOnly);
  }
  const named = statement.exportClause;
  return (
    statement.isTypeOnly || (!!named && ts.isNamedExports(named) && named.elements.every((each) => each.isTypeOnly))
  );
};

/** `import("./other.js")` takes values as well, only later. */
function dynamicIn(node: ts.Node): readonly string[] {
  const own =
    ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword && node.arguments[0]
      ? [node.arguments[0]].filter(ts.isStringLiteral).map(({ text }) => text)
      : [];
  const inner: string[] = [];
  ts.forEachChild(node, (child) => {
    inner.push(...dynamicIn(child));
  });
  return [...own, ...inner];
}

const namesOf = (statement: ts.Statement): readonly string[] => {
  const modifiers = ts.canHaveModifiers(statement) ? (ts.getModifiers(statement) ?? []) : [];
  const has = (kind: ts.SyntaxKind): boolean => modifiers.some((each) => each.kind === kind);
  if (!has(ts.SyntaxKind.ExportKeyword) || has(ts.SyntaxKind.DefaultKeyword)) return [];
  if (ts.isVariableStatement(statement))
    return statement.declarationList.declarations.map(({ name }) => (ts.isIdentifier(name) ? name.text : ""));
  const { name } = statement as { readonly name?: ts.Node };
  return name && ts.isIdentifier(name) ? [name.text] : [];
};

/** Reads a source with the parser of TypeScript. */
export function readSource(path: string, text = readFileSync(join(ROOT, path), "utf8")): Source {
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  const values = new Set(dynamicIn(file));
  const types = new Set<string>();
  for (const statement of file.statements) {
    if (!ts.isImportDeclaration(statement) && !ts.isExportDeclaration(statement)) continue;
    const { moduleSpecifier: from } = statement;
    if (from && ts.isStringLiteral(from)) (isTypeOnly(statement) ? types : values).add(from.text);
  }
  return { path, values: [...values], types: [...types], exports: [...new Set(file.statements.flatMap(namesOf))] };
}

/** The source a relative import leads to, by its path from the root; undefined for a package. */
export const targetOf = (from: string, what: string): string | undefined =>
  what.startsWith(".") ? relative(ROOT, join(ROOT, dirname(from), what)).replace(/\.(?:js|ts)$/u, ".ts") : undefined;

export type Graph = ReadonlyMap<string, readonly string[]>;

/** Sets of sources that lead to one another in a circle (Tarjan's strongly connected components). */
export function circlesIn(graph: Graph): readonly (readonly string[])[] {
  const index = new Map<string, number>();
  const low = new Map<string, number>();
  const open: string[] = [];
  const circles: string[][] = [];
  const visit = (node: string): void => {
    index.set(node, index.size);
    low.set(node, index.get(node) as number);
    open.push(node);
    for (const next of graph.get(node) ?? []) {
      if (!graph.has(next)) continue;
      if (!index.has(next)) visit(next);
      if (open.includes(next)) low.set(node, Math.min(low.get(node) as number, low.get(next) as number));
    }
    if (low.get(node) !== index.get(node)) return;
    const circle = open.splice(open.indexOf(node));
    if (circle.length > 1 || graph.get(node)?.includes(node)) circles.push(circle.sort());
  };
  for (const node of graph.keys()) if (!index.has(node)) visit(node);
  return circles;
}
