import { fileURLToPath } from "node:url";
import ts from "typescript-api";
import { expect, test } from "vitest";

// An author reads the model in an editor: every name the kit exports and every field of its types says what it is.

const KIT = fileURLToPath(new URL("../../packages/kit/src/index.ts", import.meta.url));

const program = ts.createProgram([KIT], {
  target: ts.ScriptTarget.ES2023,
  module: ts.ModuleKind.NodeNext,
  moduleResolution: ts.ModuleResolutionKind.NodeNext,
  strict: true,
  noEmit: true,
  // What the language and Node.js have is not looked at.
  types: [],
  noLib: true,
  customConditions: ["source"],
});
const checker = program.getTypeChecker();

const said = (symbol: ts.Symbol): boolean => symbol.getDocumentationComment(checker).length > 0;

/** The product's own, not what a type takes over from the language. */
const ours = (symbol: ts.Symbol): boolean =>
  symbol.declarations?.some((each) => /packages\/(calc|core|kit)\/src\//u.test(each.getSourceFile().fileName)) ?? false;

const isPublic = (symbol: ts.Symbol): boolean =>
  !symbol.declarations?.some((each) => ts.isClassElement(each) && each.name && ts.isPrivateIdentifier(each.name));

function undocumented(exported: ts.Symbol): readonly string[] {
  const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
  const isType = (symbol.flags & (ts.SymbolFlags.Class | ts.SymbolFlags.Interface)) !== 0;
  const members = isType ? checker.getPropertiesOfType(checker.getDeclaredTypeOfSymbol(symbol)) : [];
  return [
    ...(said(symbol) ? [] : [exported.name]),
    ...members
      .filter((member) => isPublic(member) && ours(member) && !said(member))
      .map((member) => `${exported.name}.${member.name}`),
  ];
}

test("every name and every field of the kit says what it is", () => {
  const source = program.getSourceFile(KIT);
  const module = source && checker.getSymbolAtLocation(source);
  const exported = module ? checker.getExportsOfModule(module) : [];
  expect(exported.length).toBeGreaterThan(40);
  expect(exported.flatMap(undocumented)).toEqual([]);
});
