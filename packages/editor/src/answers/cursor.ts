import type { Place } from "@plumbmark/core";
import { isIn, linesOf, type Zone } from "./zone.js";

// Where in the YAML a person is, told from the lines alone: while one writes, the text is broken most of the time.

/** A point of a text: line and column from 1, in UTF-16 code units. */
export interface CursorPoint {
  readonly line: number;
  readonly column: number;
}

/** What a cursor is in. */
export interface Cursor {
  /** Keys from the top to what it is in: of a value with its own key, of a key without. Items of lists count from 1. */
  readonly path: readonly string[];
  readonly at: "key" | "value";
  /** The whole word it is in, as it is written; empty where nothing is yet. */
  readonly word: string;
  /** What of the word stands in front of the cursor. */
  readonly before: string;
  /** Where the word stands. */
  readonly place: Place;
  /** Keys that stand beside the one it is in. */
  readonly beside: readonly string[];
  /** Whether it is in braces or brackets. */
  readonly inline: boolean;
}

interface Frame {
  readonly indent: number;
  readonly name: string;
  readonly isItem: boolean;
}

/** One brace or bracket that is open. */
interface Opened {
  readonly mark: "{" | "[";
  key: string | undefined;
  item: number;
  /** Column, from 1, at which its current word begins; undefined before it. */
  start: { line: number; column: number } | undefined;
  readonly keys: string[];
}

const KEY = /^("(?:[^"\\]|\\.)*"|'(?:[^']|'')*'|[^\s#{}[\],"'&*!|>%@`-][^:#]*?|-[^\s:][^:#]*?)[ \t]*:(?=\s|$)/u;

const bare = (word: string): string => word.trim().replace(/^(["'])(.*)\1$/su, "$2");

/** Where a comment begins in a line, outside quotes; its length without one. */
function endOfContent(line: string): number {
  let quote = "";
  for (let index = 0; index < line.length; index += 1) {
    const letter = line[index] as string;
    if (quote !== "") {
      if (letter === "\\" && quote === '"') index += 1;
      else if (letter === quote) quote = "";
    } else if ((letter === '"' || letter === "'") && /^$|[\s{[,:]/u.test(line[index - 1] ?? "")) quote = letter;
    else if (letter === "#" && (index === 0 || /\s/u.test(line[index - 1] as string))) return index;
  }
  return line.length;
}

const keyIn = (content: string): string | undefined => {
  const match = KEY.exec(content);
  return match ? bare(match[1] as string) : undefined;
};

/** Goes through lines with the keys and marks that are open. */
class Walk {
  frames: Frame[] = [];
  opened: Opened[] = [];
  /** The last number of an item, by its indent. */
  #items = new Map<number, number>();

  get path(): readonly string[] {
    return [
      ...this.frames.map(({ name }) => name),
      ...this.opened.flatMap(({ mark, key, item }) => (mark === "[" ? [String(item)] : key === undefined ? [] : [key])),
    ];
  }

  /** Leaves what a line at this indent is not in. */
  leave(indent: number, isItem: boolean): void {
    for (let top = this.frames.at(-1); top; top = this.frames.at(-1)) {
      const goesOn = top.indent < indent || (top.indent === indent && isItem && !top.isItem);
      if (goesOn) break;
      this.frames.pop();
    }
    for (const each of [...this.#items.keys()])
      if (each > indent || (each === indent && !isItem)) this.#items.delete(each);
  }

  /** Whether a line shows that what is open was never closed: what stands in braces is indented further than their key. */
  isForgotten(line: string): boolean {
    const lead = /^ */u.exec(line)?.[0].length ?? 0;
    return lead <= (this.frames.at(-1)?.indent ?? -1) && KEY.test(line.slice(lead));
  }

  item(indent: number): void {
    const number = (this.#items.get(indent) ?? 0) + 1;
    this.#items.set(indent, number);
    this.frames.push({ indent, name: String(number), isItem: true });
  }

  key(indent: number, name: string): void {
    this.frames.push({ indent, name, isItem: false });
  }

  /** Goes through what stands in braces or brackets, from an offset of a line to another. */
  inline(text: string, line: number, from: number, to: number): void {
    let quote = "";
    for (let index = from; index < to; index += 1) {
      const letter = text[index] as string;
      const top = this.opened.at(-1);
      if (quote !== "") {
        if (letter === quote) quote = "";
        continue;
      }
      if (letter === "{" || letter === "[") {
        if (top && !top.start) top.start = { line, column: index + 1 };
        this.opened.push({ mark: letter, key: undefined, item: 1, start: undefined, keys: [] });
      } else if (!top) return;
      else if (letter === "}" || letter === "]") this.opened.pop();
      else if (letter === ",") {
        top.item += 1;
        [top.key, top.start] = [undefined, undefined];
      } else if (
        letter === ":" &&
        top.mark === "{" &&
        top.key === undefined &&
        /^(?:\s|$)/u.test(text.slice(index + 1))
      ) {
        top.key = bare(top.start?.line === line ? text.slice(top.start.column - 1, index) : "");
        top.keys.push(top.key);
        top.start = undefined;
      } else if (!/\s/u.test(letter)) {
        top.start ??= { line, column: index + 1 };
        if ((letter === '"' || letter === "'") && top.start.line === line && top.start.column === index + 1)
          quote = letter;
      }
    }
  }
}

/** Keys of the block mapping a line is in, that line left out. */
function besideInBlock(lines: readonly string[], zone: Zone, line: number, indent: number): readonly string[] {
  const found: string[] = [];
  const look = (from: number, step: 1 | -1): void => {
    for (let at = from; isIn(zone, at); at += step) {
      const text = lines[at - 1] as string;
      const lead = /^ */u.exec(text)?.[0].length ?? 0;
      const content = text.slice(lead);
      if (content === "" || content.startsWith("#")) continue;
      // The first key of an item stands behind its dash.
      const dash = /^- +/u.exec(content)?.[0].length ?? 0;
      if (dash > 0 && lead + dash === indent) {
        const key = keyIn(content.slice(dash));
        if (key !== undefined && step === -1) found.push(key);
        return;
      }
      if (lead < indent) return;
      if (lead === indent) {
        const key = keyIn(content);
        if (key !== undefined) found.push(key);
      }
    }
  };
  look(line - 1, -1);
  look(line + 1, 1);
  return found;
}

/** Keys behind a point, in the same braces. */
function keysBehind(text: string): readonly string[] {
  let depth = 0;
  let plain = "";
  for (const letter of text) {
    if (letter === "{" || letter === "[") depth += 1;
    else if (letter === "}" || letter === "]") depth -= 1;
    if (depth < 0) break;
    if (depth === 0) plain += letter;
  }
  return [...plain.matchAll(/(?:^|,)\s*([\w.-]+)\s*:(?=\s|$)/gu)].map(([, key]) => key as string);
}

function inlineCursor(walk: Walk, text: string, { line, column }: CursorPoint): Cursor {
  const top = walk.opened.at(-1) as Opened;
  const rest = /^[^,{}[\]#:]*/u.exec(text.slice(column - 1))?.[0] ?? "";
  const isValue = top.mark === "[" || top.key !== undefined;
  const behind = isValue ? (/^[^,}\]#]*/u.exec(text.slice(column - 1))?.[0] ?? "") : rest;
  const start = top.start?.line === line ? top.start.column : column;
  const written = text.slice(start - 1, column - 1) + behind;
  const word = written.trimEnd();
  const before = text.slice(start - 1, column - 1);
  const end = Math.max(start + word.length, column);
  return {
    path: walk.path,
    at: isValue ? "value" : "key",
    word,
    before,
    place: { line, column: start, endLine: line, endColumn: end },
    beside: [...top.keys.filter((key) => key !== top.key), ...keysBehind(text.slice(end - 1))],
    inline: true,
  };
}

/** Where in the YAML of a text a point is; undefined outside of it, and in a comment. */
export function cursorAt(text: string, zone: Zone, point: CursorPoint): Cursor | undefined {
  const lines = linesOf(text);
  if (!isIn(zone, point.line)) return undefined;
  const walk = new Walk();
  for (let number = zone.from; number <= point.line; number += 1) {
    const whole = (lines[number - 1] ?? "").replace(/^\uFEFF/u, "");
    const isLast = number === point.line;
    const content = whole.slice(0, endOfContent(whole));
    if (isLast && point.column - 1 > content.length && content.length < whole.length) return undefined;
    const until = isLast ? Math.min(content.length, point.column - 1) : content.length;
    if (walk.opened.length > 0 && walk.isForgotten(content)) walk.opened = [];
    if (walk.opened.length > 0) {
      walk.inline(content, number, 0, until);
      if (isLast) return walk.opened.length > 0 ? inlineCursor(walk, content, point) : undefined;
      continue;
    }
    const lead = /^\s*/u.exec(content)?.[0].length ?? 0;
    if (content.trim() === "" && !isLast) continue;
    let at = content.trim() === "" ? Math.min(point.column - 1, whole.length) : lead;
    let rest = content.slice(at);
    const isItem = /^-(?:\s|$)/u.test(rest);
    walk.leave(at, isItem);
    while (/^-(?:\s|$)/u.test(rest)) {
      walk.item(at);
      const dash = /^-\s*/u.exec(rest)?.[0].length ?? 1;
      at += dash;
      rest = content.slice(at);
    }
    const match = KEY.exec(rest);
    if (isLast && (!match || until <= at + (match[1] as string).length))
      return besideKey(walk, lines, zone, content, at, rest, point);
    if (!match) {
      if (/^[{[]/u.test(rest)) walk.inline(content, number, at, content.length);
      continue;
    }
    walk.key(at, bare(match[1] as string));
    const value = at + match[0].length + (/^\s*/u.exec(rest.slice(match[0].length))?.[0].length ?? 0);
    if (/^[{[]/u.test(content.slice(value))) {
      walk.inline(content, number, value, Math.max(value, isLast ? until : content.length));
      if (isLast && walk.opened.length > 0) return inlineCursor(walk, content, point);
      if (isLast && until <= value) return valueCursor(walk, lines, zone, content, at, point.column - 1, point);
    }
    if (isLast) return valueCursor(walk, lines, zone, content, at, Math.min(value, Math.max(until, value)), point);
  }
  return undefined;
}

/** In a key, or where one may be written; an item of a list without a key is a value. */
function besideKey(
  walk: Walk,
  lines: readonly string[],
  zone: Zone,
  content: string,
  at: number,
  rest: string,
  { line, column }: CursorPoint,
): Cursor | undefined {
  if (/^[{[]/u.test(rest)) {
    walk.inline(content, line, at, Math.min(content.length, column - 1));
    if (walk.opened.length > 0) return inlineCursor(walk, content, { line, column });
  }
  const match = KEY.exec(rest);
  const word = (match ? (match[1] as string) : rest).trimEnd();
  const isItem = walk.frames.at(-1)?.isItem === true;
  return {
    path: walk.path,
    at: match || !isItem ? "key" : "value",
    word: bare(word),
    before: content.slice(at, Math.max(at, column - 1)),
    place: {
      line,
      column: at + 1,
      endLine: line,
      endColumn: Math.max(at + 1 + word.length, Math.min(column, at + 1 + rest.length)),
    },
    beside: besideInBlock(lines, zone, line, at),
    inline: false,
  };
}

function valueCursor(
  walk: Walk,
  lines: readonly string[],
  zone: Zone,
  content: string,
  at: number,
  value: number,
  { line, column }: CursorPoint,
): Cursor {
  const word = content.slice(value).trimEnd();
  const start = word === "" ? Math.max(value, column - 1) : value;
  return {
    path: walk.path,
    at: "value",
    word,
    before: content.slice(start, Math.max(start, column - 1)),
    place: { line, column: start + 1, endLine: line, endColumn: start + 1 + word.length },
    beside: besideInBlock(lines, zone, line, at),
    inline: false,
  };
}
