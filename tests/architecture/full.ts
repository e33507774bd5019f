import ts from "typescript-api";
import { bare, declarationOf, isFunction, type Source } from "./sources.js";

/** What gives as many things as there were. */
const KEEPING = new Set("map entries keys values toSorted toReversed sort reverse concat with split".split(" "));
const OF_OBJECTS = new Set(["Object.entries", "Object.keys", "Object.values", "Promise.all", "Array.from"]);
const BUILT = new Set(["Map", "Set"]);

/** The value of a whole number written in the source, or of a constant that is one. */
function wholeNumber(node: ts.Expression, source: Source): number {
  const given = bare(node);
  if (ts.isNumericLiteral(given)) return Number(given.text);
  const found = ts.isIdentifier(given) ? declarationOf(given, source) : undefined;
  return found && ts.isNumericLiteral(found.node) ? Number(found.node.text) : 0;
}

function isFullCall(node: ts.CallExpression, source: Source): boolean {
  const { expression, arguments: given } = node;
  if (ts.isIdentifier(expression)) return expression.text === "notEmpty";
  if (!ts.isPropertyAccessExpression(expression)) return false;
  if (OF_OBJECTS.has(expression.getText())) {
    const [first] = given;
    const of = first && bare(first);
    if (of && ts.isObjectLiteralExpression(of) && expression.getText() === "Array.from") {
      const length = of.properties.find((each) => each.name?.getText() === "length");
      return length !== undefined && ts.isPropertyAssignment(length) && wholeNumber(length.initializer, source) > 0;
    }
    return of !== undefined && isFull(of, source);
  }
  // A text split anywhere has at least one piece.
  if (expression.name.text === "split") return true;
  if (KEEPING.has(expression.name.text)) return isFull(expression.expression, source);
  const [callback] = given;
  if (expression.name.text !== "flatMap" || !isFunction(callback)) return false;
  return (
    isFull(expression.expression, source) &&
    callback.body !== undefined &&
    !ts.isBlock(callback.body) &&
    isFull(callback.body as ts.Expression, source)
  );
}

/** Whether there is something in a list, as can be seen from how it is written. */
export function isFull(expression: ts.Expression, source: Source): boolean {
  const node = bare(expression);
  if (ts.isStringLiteralLike(node)) return node.text.length > 0;
  if (ts.isArrayLiteralExpression(node))
    return node.elements.some((each) => !ts.isSpreadElement(each) || isFull(each.expression, source));
  if (ts.isObjectLiteralExpression(node))
    return node.properties.some((each) => !ts.isSpreadAssignment(each) || isFull(each.expression, source));
  if (ts.isConditionalExpression(node)) return isFull(node.whenTrue, source) && isFull(node.whenFalse, source);
  if (ts.isNewExpression(node))
    return (
      BUILT.has(node.expression.getText()) && node.arguments?.[0] !== undefined && isFull(node.arguments[0], source)
    );
  if (ts.isCallExpression(node)) return isFullCall(node, source);
  if (ts.isIdentifier(node)) {
    const found = declarationOf(node, source);
    return found !== undefined && ts.isExpression(found.node) && isFull(found.node, found.source);
  }
  if (ts.isPropertyAccessExpression(node) && ts.isIdentifier(node.expression)) {
    const found = declarationOf(node.expression, source);
    const of = found && ts.isExpression(found.node) ? bare(found.node) : undefined;
    const property =
      of && ts.isObjectLiteralExpression(of)
        ? of.properties.find((each) => each.name?.getText() === node.name.text)
        : undefined;
    return property !== undefined && ts.isPropertyAssignment(property) && found !== undefined
      ? isFull(property.initializer, found.source)
      : false;
  }
  return false;
}
