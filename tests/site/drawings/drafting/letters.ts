import type { Element } from "xast";
import { number, words } from "../read.js";
import type { Box } from "../to-size/paper.js";

// How wide letters are, from outside: the widths of Helvetica and Helvetica Bold for the signs from the blank to the
// tilde, in thousandths of the size (Adobe Core 14 AFM files, the metrics of the fonts every PDF reader has; ISO 32000-1,
// 9.6.2.2). Browsers draw a plain sans serif face about as wide.

const PLAIN = `
278 278 355 556 556 889 667 191 333 333 389 584 278 333 278 278 556 556 556 556 556 556 556 556 556 556 278 278 584 584
584 556 1015 667 667 722 722 667 611 778 722 278 500 667 556 833 722 778 667 778 722 667 611 722 667 944 667 667 611 278
278 278 469 556 333 556 556 500 556 556 278 556 556 222 222 500 222 833 556 556 556 556 333 500 278 556 500 722 500 500
500 334 260 334 584`;

const BOLD = `
278 333 474 556 556 889 722 238 333 333 389 584 278 333 278 278 556 556 556 556 556 556 556 556 556 556 333 333 584 584
584 611 975 722 722 722 722 667 611 778 722 278 556 722 611 833 722 778 667 778 722 667 611 722 667 944 667 667 611 333
278 333 584 556 333 556 611 556 611 556 333 611 611 278 278 556 278 889 611 611 611 611 389 556 333 611 556 778 556 556
500 389 280 389 584`;

const widths = (text: string): readonly number[] => text.trim().split(/\s+/u).map(Number);
const [plain, bold] = [widths(PLAIN), widths(BOLD)];

/** Signs beyond them, in thousandths as well (degree, multiply, endash, periodcentered). */
const MORE: Readonly<Record<string, number>> = { "°": 400, "×": 584, "–": 556, "·": 278 };

/** A sign that is not in the list is taken for a figure, which no sign of ours is much wider than. */
const FIGURE = 556;

/** Height of a capital, and how far a `g` reaches below the line, in thousandths of the size (CapHeight, Descender). */
export const CAPITAL = 0.718;
export const BELOW = 0.207;

/** Size of what has none of its own: that of the whole drawing. */
export const USUAL = 2.83;

export const sizeOf = (text: Element): number => Number(text.attributes["font-size"] ?? USUAL);

/** How wide words are set, millimetres. */
export function setWidth(said: string, size: number, heavy: boolean): number {
  const list = heavy ? bold : plain;
  const sum = [...said].reduce(
    (total, sign) => total + (list[(sign.codePointAt(0) as number) - 32] ?? MORE[sign] ?? FIGURE),
    0,
  );
  return (sum * size) / 1000;
}

/** Where a label stands on the paper: from the head of its capitals to its base line. */
export function boxOfLabel(text: Element): Box {
  const size = sizeOf(text);
  const width = setWidth(words(text), size, text.attributes["font-weight"] === "bold");
  const [x, y] = [number(text, "x"), number(text, "y")];
  const anchor = text.attributes["text-anchor"] ?? "start";
  const before = anchor === "end" ? width : anchor === "middle" ? width / 2 : 0;
  const high = CAPITAL * size;
  // Turned labels read from the right: what is along the line goes up the page.
  return text.attributes.transform === undefined
    ? { x: x - before, y: y - high, width, height: high }
    : { x: x - high, y: y - (width - before), width: high, height: width };
}
