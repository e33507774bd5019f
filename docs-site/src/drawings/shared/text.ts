import type { Element } from "hast";
import { s } from "hastscript";
import { num, type Point } from "./svg.js";

/** Heights of lettering, millimetres. */
export const LARGE = 4;
export const MIDDLE = 3.2;
export const SMALL = 2.7;

// Widths of a plain sans serif face, generous: what is measured here must not be shorter than what is drawn.
const NARROW_SIGNS = /[\s.,:;'|!()[\]ijlIft°′/-]/u;
const WIDE_SIGNS = /[MWmw@%ΩΣ→↔×÷—]/u;

/** About how wide a text is drawn, millimetres. */
export function measure(text: string, size: number, bold = false): number {
  let ems = 0;
  for (const sign of text)
    ems += NARROW_SIGNS.test(sign) ? 0.36 : WIDE_SIGNS.test(sign) ? 0.9 : /[A-Z]/u.test(sign) ? 0.68 : 0.58;
  return ems * size * (bold ? 1.08 : 1);
}

const inXml = (code: number): boolean =>
  code === 9 ||
  code === 10 ||
  code === 13 ||
  (code >= 0x20 && code < 0xd800) ||
  (code > 0xdfff && code < 0xfffe) ||
  code > 0xffff;

/** The text with every sign that XML does not allow replaced, whoever wrote it. */
export const fitForXml = (text: string): string =>
  [...text].map((sign) => (inXml(sign.codePointAt(0) as number) ? sign : "\ufffd")).join("");

interface Look {
  readonly size?: number;
  readonly anchor?: "start" | "middle" | "end";
  readonly bold?: boolean;
  readonly turned?: boolean;
  readonly underlined?: boolean;
  readonly data?: Readonly<Record<string, string | number>>;
}

/** One line of lettering; `at` is the end of its base line that the anchor names. */
export function text(words: string, [x, y]: Point, look: Look = {}): Element {
  const { size = MIDDLE, anchor = "start", bold = false, turned = false, underlined = false, data = {} } = look;
  return s(
    "text",
    {
      x: num(x),
      y: num(y),
      fontSize: size,
      fill: "currentColor",
      ...(anchor === "start" ? {} : { textAnchor: anchor }),
      ...(bold ? { fontWeight: "bold" } : {}),
      ...(turned ? { transform: `rotate(-90 ${num(x)} ${num(y)})` } : {}),
      ...(underlined ? { textDecoration: "underline" } : {}),
      ...data,
    },
    fitForXml(words),
  );
}

/** The text, or as much of it as fits in `width`. */
export function fitted(words: string, width: number, size: number): string {
  if (measure(words, size) <= width) return words;
  let kept = [...words];
  while (kept.length > 1 && measure(`${kept.join("")}…`, size) > width) kept = kept.slice(0, -1);
  return `${kept.join("").trimEnd()}…`;
}

/** The text in lines that fit in `width`. */
export function wrapped(words: string, width: number, size: number): readonly string[] {
  const lines: string[] = [];
  for (const word of words.split(/\s+/u)) {
    const longer = lines.length > 0 ? `${lines.at(-1)} ${word}` : word;
    if (lines.length > 0 && measure(longer, size) <= width) lines[lines.length - 1] = longer;
    else lines.push(fitted(word, width, size));
  }
  return lines;
}
