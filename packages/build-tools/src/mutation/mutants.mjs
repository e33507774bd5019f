// Finds what may be changed in a source file: figures, signs, comparisons, least and greatest.
import ts from "typescript-api";

const S = ts.SyntaxKind;

/** Each sign and what stands in its place. A boundary is moved by one change, turned round by the other. */
const SIGNS = new Map([
  [S.PlusToken, ["-"]],
  [S.MinusToken, ["+"]],
  [S.AsteriskToken, ["/"]],
  [S.SlashToken, ["*"]],
  [S.AsteriskAsteriskToken, ["*"]],
  [S.LessThanToken, ["<=", ">="]],
  [S.LessThanEqualsToken, ["<", ">"]],
  [S.GreaterThanToken, [">=", "<="]],
  [S.GreaterThanEqualsToken, [">", "<"]],
  [S.EqualsEqualsEqualsToken, ["!=="]],
  [S.ExclamationEqualsEqualsToken, ["==="]],
  [S.AmpersandAmpersandToken, ["||"]],
  [S.BarBarToken, ["&&"]],
]);

/** Functions with an opposite. */
const CALLS = new Map([
  ["Math.min", "Math.max"],
  ["Math.max", "Math.min"],
  ["Math.floor", "Math.ceil"],
  ["Math.ceil", "Math.floor"],
  ["Math.sqrt", "Math.abs"],
  ["Math.sin", "Math.cos"],
  ["Math.cos", "Math.sin"],
  ["atMost", "atLeast"],
  ["atLeast", "atMost"],
]);

/** A figure this small is fineness of the arithmetic and no limit: nothing outside the project tells how fine. */
const FINE = 1e-4;

const isText = (node) =>
  ts.isStringLiteral(node) || ts.isTemplateExpression(node) || ts.isNoSubstitutionTemplateLiteral(node);

/** The number a literal is changed to: the next whole one where it is small and whole, else a tenth more. */
const other = (value) => (Number.isInteger(value) && value <= 16 ? value + 1 : value * 1.1);

/**
 * Millimetres. What a figure that is added to a place on the paper is changed by: whether lettering stands 1.4 mm or 2.4 mm
 * off its line is design and told by nothing outside the project; that it stands by its line is.
 */
const ASTRAY = 40;

/** How strong a line of a drawing is, or how dark a surface: style, as what stands in its style sheet is. */
const isLook = ({ parent }, path) =>
  path.startsWith("docs-site/src/drawings/") &&
  ts.isPropertyAssignment(parent) &&
  /^(?:strokeWidth|fillOpacity)$/u.test(parent.name.getText());

/** What is counted and not measured on the paper. */
const COUNT = /\b(?:index|count|length|columns?|rows?|row|place|order|number|hops|panels|cells|ratio)\b/u;

/** Whether a figure is added to a place on the paper, or taken from it: `y - 1.4`. */
function isGap(node, path, source) {
  if (!path.startsWith("docs-site/src/drawings/")) return false;
  let { parent } = node;
  let inner = node;
  while (ts.isParenthesizedExpression(parent)) [inner, parent] = [parent, parent.parent];
  if (!ts.isBinaryExpression(parent) || ![S.PlusToken, S.MinusToken].includes(parent.operatorToken.kind)) return false;
  const other = parent.left === inner ? parent.right : parent.left;
  return !ts.isNumericLiteral(other) && !COUNT.test(other.getText(source));
}

function figure(node, text, path, source) {
  const value = Number(text.replaceAll("_", ""));
  if (value !== 0 && Math.abs(value) < FINE) return [];
  if (isLook(node, path)) return [];
  if (isGap(node, path, source)) return [String(value + ASTRAY)];
  const { parent } = node;
  // A key is no figure, nor is the place of an item in a list.
  if (ts.isPropertyAssignment(parent) && parent.name === node) return [];
  if (ts.isElementAccessExpression(parent) || ts.isLiteralTypeNode(parent)) return [];
  return [String(other(value))];
}

/** "As good as equal": whether the fineness itself still counts is no limit of anything. */
const isFineness = (node, source) => /\de-\d|SAME_PLACE/u.test(node.getText(source));

/** A boundary moved by nothing; the sign turned round is tried all the same. */
const isMoved = (sign, put) => put.startsWith(sign) || sign.startsWith(put);

function signsOf(node, source) {
  const { left, right, operatorToken } = node;
  if (isText(left) || isText(right)) return [];
  const sign = operatorToken.getText(source);
  return (SIGNS.get(operatorToken.kind) ?? []).filter(
    (put) => !(/^[<>]/u.test(sign) && isMoved(sign, put) && isFineness(node, source)),
  );
}

function changesOf(node, source, path) {
  const text = node.getText(source);
  if (ts.isNumericLiteral(node)) return figure(node, text, path, source);
  if (ts.isBinaryExpression(node)) {
    const [left, right] = [node.left.getText(source), node.right.getText(source)];
    return signsOf(node, source).map((sign) => `(${left}) ${sign} (${right})`);
  }
  if (ts.isPrefixUnaryExpression(node) && [S.MinusToken, S.ExclamationToken].includes(node.operator))
    return [`(${node.operand.getText(source)})`];
  if (ts.isCallExpression(node)) {
    const name = node.expression.getText(source);
    const opposite = CALLS.get(name);
    return opposite ? [opposite + text.slice(name.length)] : [];
  }
  return [];
}

/** Parts that are not computed with: types, imports, worked examples, texts of a rule about itself. */
const isApart = (node) =>
  ts.isTypeNode(node) ||
  ts.isInterfaceDeclaration(node) ||
  ts.isTypeAliasDeclaration(node) ||
  ts.isImportDeclaration(node) ||
  ts.isExportDeclaration(node) ||
  (ts.isPropertyAssignment(node) && node.name.getText() === "example");

/** Whether a node is worked out when its file is loaded, and not each time a function is called. */
function isStatic(node) {
  for (let at = node.parent; at; at = at.parent) if (ts.isFunctionLike(at)) return false;
  return true;
}

/** Every change of a file: place, what stood there, what is put there. */
export function mutantsOf(path, text) {
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  const found = [];
  const visit = (node) => {
    if (isApart(node)) return;
    for (const put of changesOf(node, source, path)) {
      const { line, character } = source.getLineAndCharacterOfPosition(node.getStart(source));
      const from = node.getStart(source);
      found.push({
        path,
        from,
        to: node.end,
        line: line + 1,
        column: character + 1,
        was: node.getText(source),
        put,
        early: isStatic(node),
      });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}
