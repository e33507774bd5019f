import { type Token, tokensOf } from "./tokens.js";

/** An expression as a tree, close enough to how it is set. */
export type Expression =
  | { readonly is: "number" | "name" | "unit"; readonly text: string }
  | { readonly is: "row"; readonly of: readonly (Expression | string)[] }
  | { readonly is: "fraction"; readonly over: Expression; readonly under: Expression }
  | { readonly is: "power"; readonly base: Expression; readonly to: Expression }
  | { readonly is: "root" | "total" | "brackets"; readonly of: Expression }
  | { readonly is: "function"; readonly name: string; readonly of: readonly Expression[] };

const POWERS: Readonly<Record<string, string>> = { "²": "2", "³": "3", "⁴": "4" };
const BARE = new Set(["sin", "cos", "tan", "arctan", "arcsin", "arccos", "log", "ln"]);
const MINUS = new Set(["+", "−"]);

class Unreadable extends Error {}

/** Reads one expression by descent: sums of products of powers. */
class Reading {
  #at = 0;
  constructor(readonly tokens: readonly Token[]) {}

  get #next(): Token | undefined {
    return this.tokens[this.#at];
  }

  #is(...signs: readonly string[]): boolean {
    return this.#next?.type === "sign" && signs.includes(this.#next.text);
  }

  #take(): Token {
    const token = this.#next;
    if (!token) throw new Unreadable();
    this.#at += 1;
    return token;
  }

  #expect(sign: string): void {
    if (!this.#is(sign)) throw new Unreadable();
    this.#take();
  }

  whole(): Expression {
    const all = this.#sum();
    if (this.#next) throw new Unreadable();
    return all;
  }

  #sum(): Expression {
    const row: (Expression | string)[] = this.#is("−") ? [this.#take().text] : [];
    row.push(this.#product());
    while (this.#next?.type === "sign" && MINUS.has(this.#next.text)) row.push(this.#take().text, this.#product());
    return row.length === 1 ? (row[0] as Expression) : { is: "row", of: row };
  }

  #product(): Expression {
    let left = this.#power();
    for (;;) {
      if (this.#is("÷")) {
        this.#take();
        left = { is: "fraction", over: left, under: this.#power() };
      } else if (this.#is("×")) {
        left = { is: "row", of: [left, this.#take().text, this.#power()] };
      } else return left;
    }
  }

  #power(): Expression {
    let base = this.#one();
    while (this.#is("²", "³", "⁴", "^")) {
      const { text } = this.#take();
      const to: Expression = text === "^" ? this.#one() : { is: "number", text: POWERS[text] ?? "" };
      base = { is: "power", base, to };
    }
    return base;
  }

  #one(): Expression {
    if (this.#is("√")) {
      this.#take();
      const of = this.#one();
      return { is: "root", of: of.is === "brackets" ? of.of : of };
    }
    if (this.#is("Σ")) {
      this.#take();
      return { is: "total", of: this.#power() };
    }
    if (this.#is("(")) {
      this.#take();
      const of = this.#sum();
      this.#expect(")");
      return { is: "brackets", of };
    }
    const { type, text } = this.#take();
    if (type === "sign") throw new Unreadable();
    return type === "name" ? this.#named(text) : this.#numbered(text);
  }

  /** A number with the unit or symbol that stands beside it, which belong together: `24 bit`, `2 t`. */
  #numbered(text: string): Expression {
    const number: Expression = { is: "number", text };
    if (this.#next?.type !== "name") return number;
    const beside: Expression = this.#next.text.length > 1 ? { is: "unit", text: this.#take().text } : this.#power();
    return { is: "row", of: [number, "\u2009", beside] };
  }

  #named(name: string): Expression {
    if (this.#is("(") && this.#next?.close) {
      this.#take();
      const of = [this.#sum()];
      while (this.#is(",", ";")) {
        this.#take();
        of.push(this.#sum());
      }
      this.#expect(")");
      return { is: "function", name, of };
    }
    return BARE.has(name)
      ? { is: "row", of: [{ is: "name", text: name }, "\u2009", this.#power()] }
      : { is: "name", text: name };
  }
}

/** The tree of an expression; undefined where it cannot be read, and is then shown as it is written. */
export function expressionOf(text: string): Expression | undefined {
  const tokens = tokensOf(text);
  if (!tokens) return undefined;
  try {
    return new Reading(tokens).whole();
  } catch (error) {
    if (error instanceof Unreadable) return undefined;
    throw error;
  }
}
