import { safeText, UNSAFE_TEXT } from "@plumbmark/core";
import type { CommandContext } from "./context.js";

// The one place where text leaves the program for a terminal or a pipe.

/** What colours a text (ECMA-48, 8.3.117), and the ends of lines in CSV (RFC 4180). */
const COLOUR_OR_LINE_END = /\p{Cc}\[[\d;]*m|\r\n/gu;

/** The same of a text that this program has coloured, or whose lines end as in CSV. */
function safeOutput(text: string, mayColour: boolean): string {
  if (text.search(UNSAFE_TEXT) < 0) return text;
  let [safe, from] = ["", 0];
  for (const { 0: found, index } of text.matchAll(COLOUR_OR_LINE_END)) {
    const isOurs = found === "\r\n" || (mayColour && found.startsWith("\u001b"));
    safe += safeText(text.slice(from, index)) + (isOurs ? found : safeText(found));
    from = index + found.length;
  }
  return safe + safeText(text.slice(from));
}

const escaped = (unit: string): string => `\\u${unit.charCodeAt(0).toString(16).padStart(4, "0")}`;

/** JSON in which those characters, which stand only within its texts, are written as escapes (RFC 8259, 7). */
const safeJson = (text: string): string => text.replace(UNSAFE_TEXT, escaped);

/** The same context, in which nothing unsafe is printed or told, whatever a command hands on. */
export const withSafeOutput = (context: CommandContext): CommandContext => {
  const mayColour = context.colour > 0;
  return {
    ...context,
    print: (text, form) =>
      context.print(form === "json" ? safeJson(text) : safeOutput(text, mayColour && form === "report")),
    warn: (text) => context.warn(safeText(text)),
  };
};
