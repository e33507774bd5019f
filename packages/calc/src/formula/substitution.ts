import type { Print } from "../quantity/print.js";
import { unitByCode } from "../quantity/units.js";
import { guessMark, type Known } from "./value.js";

type Knowns = Readonly<Record<string, Known | readonly Known[]>>;

const inBrackets = (text: string): string => (text.startsWith("−") || /[+−×÷]/u.test(text) ? `(${text})` : text);

/** A list as a sum: `6 × 133 W + 2 × 47 W`. */
export function showSum(values: readonly Known[], print: Print): string {
  if (values.length === 0) return "0";
  const counts = new Map<string, number>();
  for (const each of values) {
    const text = `${print(each.value, each.kind)}${guessMark(each)}`;
    counts.set(text, (counts.get(text) ?? 0) + 1);
  }
  return [...counts].map(([text, count]) => (count > 1 ? `${count} × ${text}` : text)).join(" + ");
}

const unitOf = (text: string): string => text.replace(/^[−\d.,\s]+/u, "");

/** Prints values so that lengths share a unit: inches and feet in one line would not multiply out. */
function inOneUnit(values: readonly Known[], print: Print): (value: Known) => string {
  const lengths = values.filter(({ kind, value }) => kind === "length" && value !== 0);
  const differ = new Set(lengths.map(({ value }) => unitOf(print(value, "length")))).size > 1;
  const long = unitByCode("length", unitOf(print(1, "mass")) === "lb" ? "[ft_i]" : "m");
  return (each) => {
    const { value, kind } = each;
    return `${kind === "length" && differ ? print(value, kind, long) : print(value, kind)}${guessMark(each)}`;
  };
}

/** A piece of an expression: words that stand as they are, a sum over a symbol, or a symbol that may be raised. */
type Piece =
  | string
  | { readonly symbol: string; readonly as: "sum" | "value"; readonly raised?: string; readonly whole: string };

const piece = ([whole, summed, symbol, raised]: RegExpMatchArray): Piece =>
  summed === undefined
    ? { symbol: symbol as string, as: "value", whole, ...(raised ? { raised } : {}) }
    : { symbol: summed, as: "sum", whole: `Σ${summed}` };

const SUM = "Σ\\s*(?=\\p{L})([\\p{L}\\p{N}_]+)";
const WORD = "[\\p{L}\\p{Nd}_]+";
// A raised figure behind a symbol is no part of its name; what is raised stands in brackets, with its unit.
const around = (symbol: string): RegExp =>
  new RegExp(`${SUM}|(?<![\\p{L}\\p{Nd}_])(${symbol})([²³])?(?![\\p{L}\\p{Nd}_])`, "gu");

/** Any word may be a symbol: one pattern for all expressions, since setting one up takes longer than using it. */
const WORDS = around(WORD);
const isWord = new RegExp(`^${WORD}$`, "u");

const quoted = (symbol: string): string => symbol.replace(/[.*+?^${}()|[\]\\]/gu, "\\$&");

function patternFor(symbols: readonly string[]): RegExp {
  if (symbols.every((symbol) => isWord.test(symbol))) return WORDS;
  return around(
    symbols
      .toSorted((a, b) => b.length - a.length)
      .map(quoted)
      .join("|"),
  );
}

/** An expression taken apart at its symbols. */
function piecesOf(expression: string, symbols: readonly string[]): readonly Piece[] {
  if (symbols.length === 0) return [expression];
  const pieces: Piece[] = [];
  let end = 0;
  for (const found of expression.matchAll(patternFor(symbols))) {
    if (found[2] !== undefined && !symbols.includes(found[2])) continue;
    pieces.push(expression.slice(end, found.index), piece(found));
    end = (found.index as number) + found[0].length;
  }
  return [...pieces, expression.slice(end)];
}

/**
 * Puts the numbers into an expression for its symbols. It is taken apart at the first use and then only put together:
 * a repository shows some formulas a hundred thousand times.
 */
export function substitution(expression: string, symbols: readonly string[]): (values: Knowns, print: Print) => string {
  let pieces: readonly Piece[] | undefined;
  return (values, print) => {
    pieces ??= piecesOf(expression, symbols);
    const show = inOneUnit(Object.values(values).flat(), print);
    return pieces.map((each) => (typeof each === "string" ? each : shownPiece(each, values, show, print))).join("");
  };
}

function shownPiece(
  { symbol, as, raised, whole }: Exclude<Piece, string>,
  values: Knowns,
  show: (value: Known) => string,
  print: Print,
): string {
  const value = values[symbol];
  if (as === "sum") return Array.isArray(value) ? `(${showSum(value as readonly Known[], print)})` : whole;
  if (Array.isArray(value))
    return `(${(value as readonly Known[]).map((each) => `${print(each.value, each.kind)}${guessMark(each)}`).join("; ")})`;
  const text = show(value as Known);
  return raised ? `(${text})${raised}` : inBrackets(text);
}
