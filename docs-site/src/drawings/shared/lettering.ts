import type { Element } from "hast";
import { num, s } from "../../html/html.js";
import { type PaperPoint, paper, type Shapes } from "./svg.js";

/** Sizes of lettering, millimetres: 11, 9 and 8 points. Eight are the least that is read on a ladder. */
export const LARGE = 3.88;
export const MIDDLE = 3.18;
export const SMALL = 2.83;
/** Seven points and a half: in the cells of a face, where a line of cable leaves no more room. */
export const SMALLEST = 2.65;

/** From one line of small lettering to the next. */
export const LEADING = 3.9;

// Widths of a plain sans serif face, generous: what is measured here must not be shorter than what is drawn.
const NARROW_SIGNS = /[\s.,:;'|!()[\]ijlIft°′/-]/u;
const WIDE_SIGNS = /[MWmw@%ΩΣ→↔×÷—]/u;

const widthOf = (sign: string): number =>
  NARROW_SIGNS.test(sign) ? 0.36 : WIDE_SIGNS.test(sign) ? 0.9 : /[A-Z]/u.test(sign) ? 0.68 : 0.58;

/** Of the first signs there are, which are nearly all that is written. */
const WIDTHS = Array.from({ length: 256 }, (_, code) => widthOf(String.fromCodePoint(code)));

/** About how wide a text is drawn, millimetres. */
export function measure(text: string, size: number, bold = false): number {
  let ems = 0;
  for (const sign of text) ems += WIDTHS[sign.codePointAt(0) as number] ?? widthOf(sign);
  return ems * size * (bold ? 1.08 : 1);
}

/** The signs XML 1.0 does not allow (2.2, Char). */
const NOT_IN_XML = /[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu;

/**
 * The text with every sign that XML does not allow replaced, whoever wrote it. The end of a character data section may
 * stand in no text either (2.4), and the serializer lets it through.
 */
export const fitForXml = (text: string): string => text.replace(NOT_IN_XML, "\ufffd").replaceAll("]]>", "]] >");

interface Look {
  readonly size?: number;
  readonly anchor?: "start" | "middle" | "end";
  readonly bold?: boolean;
  readonly turned?: boolean;
  readonly underlined?: boolean;
  readonly data?: Readonly<Record<string, string | number>>;
}

/** One line of lettering; `at` is the end of its base line that the anchor names. */
export function lettering(words: string, [x, y]: PaperPoint, look: Look = {}): Element {
  const { size = MIDDLE, anchor = "start", bold = false, turned = false, underlined = false, data = {} } = look;
  return s(
    "text",
    {
      x,
      y,
      ...(size === SMALL ? {} : { fontSize: size }),
      ...(anchor === "start" ? {} : { textAnchor: anchor }),
      ...(bold ? { fontWeight: "bold" } : {}),
      ...(turned ? { transform: `rotate(-90 ${num(x)} ${num(y)})` } : {}),
      ...(underlined ? { textDecoration: "underline" } : {}),
      ...data,
    },
    fitForXml(words),
  );
}

/** Base line of lettering whose capitals stand about the middle of a line at `y`. */
export const aboutMiddle = (y: number, size = SMALL): number => y + 0.36 * size;

const BESIDE = 0.3;

/** Lettering on paper of its own: lines may pass behind it. */
export function onPaper(words: string, [x, y]: PaperPoint, look: Look & { readonly size: number }): Shapes {
  const { size, anchor = "start", bold } = look;
  const width = measure(words, size, bold);
  const left = anchor === "start" ? x : anchor === "end" ? x - width : x - width / 2;
  return [
    paper({ x: left - BESIDE, y: y - 0.85 * size, width: width + 2 * BESIDE, height: 1.1 * size }),
    lettering(words, [x, y], look),
  ];
}

/** The text, or as much of it as fits in `width`. */
export function fitted(words: string, width: number, size: number): string {
  if (measure(words, size) <= width) return words;
  let kept = [...words];
  while (kept.length > 1 && measure(`${kept.join("")}…`, size) > width) kept = kept.slice(0, -1);
  return `${kept.join("").trimEnd()}…`;
}

/** Where a line may end: anywhere between words, but not between a number and its unit (SI Brochure, 9th edition, 5.4.3). */
const BREAK = /(?<!\d)\s+|\s+(?![\p{L}°%]{1,3}(?![\p{L}\p{Nd}]))/u;

/** The text in lines that fit in `width`. */
export function wrapped(words: string, width: number, size: number): readonly string[] {
  const lines: string[] = [];
  for (const word of words.split(BREAK)) {
    const longer = lines.length > 0 ? `${lines.at(-1)} ${word}` : word;
    if (lines.length > 0 && measure(longer, size) <= width) lines[lines.length - 1] = longer;
    else lines.push(fitted(word, width, size));
  }
  return lines;
}
