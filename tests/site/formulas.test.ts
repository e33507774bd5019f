import { type Formula, formulas } from "@plumbmark/calc";
import { formulaMath, htmlText } from "@plumbmark/docs-site";
import { evaluate } from "mathjs";
import { describe, expect, it } from "vitest";
import type { Element, ElementContent } from "xast";
import { notEmpty } from "../run/not-empty.js";
import { read } from "./drawings/read.js";

// What is set on the page is read back and evaluated by mathjs: it has to give what the formula's own example gives,
// whose figures come from print (tests/reference/formula-examples.test.ts).

/** Units that stand in expressions, in the unit the values are kept in; 1 BTU/h is 0.29307107 W (NIST SP 811, B.8). */
const UNITS: Readonly<Record<string, string>> = { bit: "1", Hz: "1", m: "1", "BTU/h": "0.29307107" };
const WORDS: Readonly<Record<string, string>> = {
  "×": "*",
  "−": "-",
  "+": "+",
  "(": "(",
  ")": ")",
  ",": ",",
  arctan: "atan",
};

const text = (node: ElementContent): string =>
  node.type === "text" ? node.value : node.type === "element" ? node.children.map(text).join("") : "";

const numberOf = (shown: string): string => {
  const plain = shown.replaceAll(",", "");
  if (plain.endsWith("′")) return `(${plain.slice(0, -1)} / 60)`;
  return plain.endsWith("°") ? plain.slice(0, -1) : plain;
};

const symbolName = (symbol: string): string =>
  `s_${symbol.replaceAll("_", "").replace(/[^A-Za-z0-9]/gu, (each) => `u${each.codePointAt(0)}`)}`;

/** The arithmetic that a MathML tree shows, for mathjs. */
function arithmetic(node: ElementContent, symbols: ReadonlySet<string>): string {
  if (node.type !== "element") return "";
  const [one, other] = node.children as readonly Element[];
  const part = (each: ElementContent | undefined): string => (each ? arithmetic(each, symbols) : "");
  switch (node.name) {
    case "mn":
      return numberOf(text(node));
    case "mtext":
      return UNITS[text(node)] ?? `unknown_${text(node)}`;
    case "mspace":
      return "*";
    case "mfrac":
      return `((${part(one)}) / (${part(other)}))`;
    case "msup":
      return `((${part(one)}) ^ (${part(other)}))`;
    case "msqrt":
      return `sqrt(${node.children.map(part).join("")})`;
    case "mo":
      return text(node) === "∑" ? "sum" : (WORDS[text(node)] ?? `unknown(${text(node)})`);
    case "mi":
    case "msub":
      return symbols.has(text(node)) ? symbolName(text(node)) : (UNITS[text(node)] ?? WORDS[text(node)] ?? text(node));
    case "mrow": {
      const parts = node.children.map(part);
      // A function's name, a thin space and what it is of: `sin α`.
      if (["sin", "cos", "tan", "atan"].includes(parts[0] ?? "") && parts[1] === "*")
        return `${parts[0]}(${parts.slice(2).join("")})`;
      return parts[0] === "sum" ? `sum(${parts.slice(1).join("")})` : `${parts.join(" ")}`;
    }
    default:
      return `unknown_${node.name}`;
  }
}

/** mathjs works in radians; angles are kept in degrees, and so shown. */
const inDegrees = {
  sin: (x: number) => Math.sin((x * Math.PI) / 180),
  tan: (x: number) => Math.tan((x * Math.PI) / 180),
  atan: (x: number) => (Math.atan(x) * 180) / Math.PI,
};

/** Standard gravity in m/s² (ISO 80000-3); stresses are kept in MPa, everything else in its plain SI unit. */
const CONSTANTS = { g: 9.80665 };
const factor = (kind: string): number => (kind === "stress" ? 1e6 : 1);

function numbers({ inputs, example }: Formula): Record<string, unknown> {
  const given: Record<string, unknown> = {};
  for (const [symbol, { kind }] of Object.entries(inputs)) {
    const value = example.given[symbol] as number | readonly number[];
    if (typeof value === "number") given[symbolName(symbol)] = value * factor(kind);
    // A list stands in a sum, or by its greatest and least: `Imax`.
    else
      Object.assign(given, {
        [symbolName(symbol)]: value,
        [`${symbol}max`]: Math.max(...value),
        [`${symbol}min`]: Math.min(...value),
      });
  }
  return given;
}

describe("a formula as it is set on a page gives what its example gives", () => {
  it.each(notEmpty(formulas().map((each) => [each.id, each] as const)))("%s", (_, formula) => {
    const { root: math } = read(htmlText(formulaMath(formula.symbol, formula.expression)));
    expect(math.name, "it is set, not shown as text").toBe("math");
    const [row] = math.children as readonly Element[];
    const right = (row?.children ?? []).slice(2);
    const symbols = new Set(Object.keys(formula.inputs).map((symbol) => symbol.replaceAll("_", "")));
    const shown = right.map((each) => arithmetic(each, symbols)).join("");
    const got = Number(evaluate(shown, { ...CONSTANTS, ...numbers(formula), ...inDegrees })) / factor(formula.kind);
    expect(
      Math.abs(got - formula.example.gives),
      `${shown} gives ${got}, printed ${formula.example.gives}`,
    ).toBeLessThanOrEqual(Math.max(formula.example.within, Math.abs(formula.example.gives) * 1e-3));
  });
});
