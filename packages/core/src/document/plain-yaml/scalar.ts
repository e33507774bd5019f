import type { Data } from "../yaml.js";
import { leave } from "./lines.js";

const [SPACE, HASH, COMMA, COLON, MINUS] = [32, 35, 44, 58, 45];
const QUOTES = /["']/u;
const BRACKETS = /[[\]{}]/u;

const isWord = (code: number): boolean =>
  (code >= 97 && code <= 122) || (code >= 65 && code <= 90) || (code >= 48 && code <= 57) || code === 95;

/** What a plain text may begin with without meaning anything else: a letter, a figure, `.`, `/`, `(`, or `-` before one. */
const begins = (text: string, at: number): boolean => {
  const code = text.charCodeAt(at);
  if (code === MINUS) return isWord(text.charCodeAt(at + 1));
  return isWord(code) || code === 46 || code === 47 || code === 40 || (code >= 0xa1 && code !== 0xfeff);
};

/** Whether a colon at `at` ends a key: a blank or the end of the line follows. */
const endsKey = (text: string, at: number, end: number): boolean => at + 1 >= end || text.charCodeAt(at + 1) === SPACE;

/** Where the key that begins at `at` ends: at its colon. Keys are words, with blanks, points and hyphens between them. */
export function keyEnd(text: string, at: number, end: number): number {
  if (!isWord(text.charCodeAt(at))) leave();
  for (let index = at + 1; index < end && index < at + 1000; index += 1) {
    const code = text.charCodeAt(index);
    if (code === COLON && endsKey(text, index, end) && text.charCodeAt(index - 1) !== SPACE) return index;
    if (!isWord(code) && code !== SPACE && code !== MINUS && code !== 46) leave();
  }
  return leave();
}

/** Where the plain text that begins at `at` ends, blanks behind it left out. */
export function plainEnd(text: string, at: number, end: number, flow: boolean): number {
  if (!begins(text, at)) leave();
  let last = at;
  for (let index = at; index < end; index += 1) {
    const code = text.charCodeAt(index);
    if (code < SPACE) leave();
    if (code === SPACE) continue;
    if (code === HASH && text.charCodeAt(index - 1) === SPACE) break;
    if (code === COLON && (endsKey(text, index, end) || flow)) leave();
    if (flow && (code === COMMA || code === 125 || code === 93)) break;
    if (flow && (code === 123 || code === 91)) leave();
    last = index;
  }
  return last + 1;
}

/** Where the text in quotes that begins at `at` ends, behind its closing quote; nothing in it may be escaped. */
export function quotedEnd(text: string, at: number, end: number): number {
  const quote = text[at] as string;
  const closing = text.indexOf(quote, at + 1);
  if (closing < 0 || closing >= end || text[closing + 1] === quote) leave();
  for (let index = at + 1; index < closing; index += 1) {
    const code = text.charCodeAt(index);
    if (code < SPACE || code === 92) leave();
  }
  return closing + 1;
}

export const isQuote = (character: string | undefined): boolean => character !== undefined && QUOTES.test(character);
export const isBracket = (character: string | undefined): boolean =>
  character !== undefined && BRACKETS.test(character);

const NUMBER = /^[-+]?(?:\.[0-9]+|[0-9]+(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?$/u;
const WORDS: ReadonlyMap<string, Data> = new Map([
  ...["null", "Null", "NULL"].map((word) => [word, null] as const),
  ...["true", "True", "TRUE"].map((word) => [word, true] as const),
  ...["false", "False", "FALSE"].map((word) => [word, false] as const),
]);

/** What a plain text stands for by the core schema (YAML 1.2.2, 10.3): a number, `true`, `false`, nothing, or itself. */
export function plainData(text: string): Data {
  const code = text.charCodeAt(0);
  if ((code >= 48 && code <= 57) || code === MINUS || code === 46) {
    if (NUMBER.test(text)) return Number(text);
    // 0x1F, 0o17, .inf and .nan
    if (/^(?:0[xo]|-?\.[in])/iu.test(text)) leave();
    return text;
  }
  return WORDS.has(text) ? (WORDS.get(text) as Data) : text;
}
