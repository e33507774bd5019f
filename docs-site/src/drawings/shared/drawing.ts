import type { System } from "@plumbmark/calc";
import type { Build } from "@plumbmark/core";
import type { Element } from "hast";
import { type Attributes, type Content, num, s, xmlText } from "../../html/html.js";
import { fitForXml, LEADING, lettering, MIDDLE, SMALL, wrapped } from "./lettering.js";
import { line, NARROW, paper, type Shapes } from "./svg.js";

/** What a drawing is made from. */
export interface DrawingSubject {
  readonly build: Build;
  readonly system: System;
  /** Rules that do not hold for what has this path, in words; without it nothing was judged. */
  readonly failures?: (path: string) => readonly string[];
}

/** What stands beside a figure of something for which a rule does not hold; nothing where all hold. */
export const failureMark = ({ failures }: DrawingSubject, path: string): string | undefined => {
  const found = failures?.(path) ?? [];
  return found.length === 0 ? undefined : found.join(", ");
};

/** The same as a sentence for the notes of a drawing: what it is of, and which rules. */
export const failureNotes = (
  subject: DrawingSubject,
  things: readonly { readonly path: string; readonly label: string }[],
): readonly string[] =>
  things.flatMap(({ path, label }) => {
    const mark = failureMark(subject, path);
    return mark === undefined ? [] : [`${label} does not hold: ${mark}.`];
  });

/** One drawing, in millimetres of paper. */
export interface Drawing {
  /** Name of its file and of links to it: `hang-plot-header`. */
  readonly name: string;
  readonly title: string;
  /** What it shows, for whoever cannot see it. */
  readonly description: string;
  readonly width: number;
  readonly height: number;
  /** Which end is looked at first where the whole is wider than the screen; the left one when left out. */
  readonly opens?: "left" | "right";
  readonly shapes: Shapes;
}

/**
 * The drawing with a line at its foot that says what it belongs to: a loose page is to be known for what it is.
 * @param notice words that it must not be built from; they stand above that line in heavy type, and are spoken first
 */
export function stamped(drawing: Drawing, words: string, notice?: string): Drawing {
  const warned = notice === undefined ? [] : wrapped(notice, (drawing.width - 4) / 1.1, MIDDLE);
  const lines = wrapped(words, drawing.width - 4, SMALL);
  const top = drawing.height + LEADING;
  const y = top + warned.length * LEADING;
  return {
    ...drawing,
    description: notice === undefined ? drawing.description : `${notice} ${drawing.description}`,
    height: y + lines.length * LEADING - 1,
    shapes: [
      ...drawing.shapes,
      line([2, top - 3.5], [drawing.width - 2, top - 3.5]),
      ...warned.map((each, index) =>
        lettering(each, [2, top + index * LEADING], {
          size: MIDDLE,
          bold: true,
          data: index === 0 ? { dataNotice: notice as string } : {},
        }),
      ),
      ...lines.map((each, index) =>
        lettering(each, [2, y + index * LEADING], { size: SMALL, data: index === 0 ? { dataStamp: words } : {} }),
      ),
    ],
  };
}

/** Width between the margins of A4 and of Letter, millimetres. */
export const SHEET_WIDTH = 178;

/** Height between the margins of Letter, the lower of the two, less what stands above and below a drawing; millimetres. */
const SHEET_HEIGHT = 244;

/** What `stamped` adds at most to a wide drawing and to a narrow one. */
const stampHeight = ({ width }: Drawing): number => (width < SHEET_WIDTH ? 26 : 16);

const SHARES = [1, 0.85, 0.7, 0.55, 0.42, 0.32];

/** Whether a drawing with its stamp fits on a page at full size. */
export const fitsPage = (drawing: Drawing): boolean => drawing.height + stampHeight(drawing) <= SHEET_HEIGHT;

/**
 * The drawing with the largest of its parts as high as they can be for the whole to be printed at full size: a scale
 * that is stated is true on paper. Where it cannot, it is given as low as it gets, and the browser makes it smaller.
 * @param draw the drawing with so much of the room for what is drawn to scale
 * @param least the share below which its figures would run into one another
 */
export function fittedToPage(draw: (share: number) => Drawing, least = 0): Drawing {
  let drawing = draw(1);
  for (const share of SHARES.slice(1).filter((each) => each >= least)) {
    if (fitsPage(drawing)) return drawing;
    drawing = draw(share);
  }
  return drawing;
}

/** What a shape has when it says nothing else: most of a drawing is small lettering and narrow lines. */
const USUAL = { fontFamily: "system-ui, sans-serif", fontSize: SMALL, strokeWidth: NARROW, fill: "currentColor" };

/** The root element of a drawing with its words for whoever cannot see it. `id` is its own on the page. */
function rootElement(
  { title, description, ...size }: Drawing,
  id: string,
  more: Attributes,
  content: Content,
): Element {
  const [width, height] = [num(size.width), num(size.height)];
  return s(
    "svg",
    {
      ...more,
      className: size.width < SHEET_WIDTH ? ["drawing", "compact"] : ["drawing"],
      viewBox: `0 0 ${width} ${height}`,
      width: `${width}mm`,
      height: `${height}mm`,
      role: "img",
      ariaLabelledby: `${id}-title ${id}-text`,
      ...USUAL,
      color: "#111",
    },
    [
      s("title", { id: `${id}-title` }, fitForXml(title)),
      s("desc", { id: `${id}-text` }, fitForXml(description)),
      content,
    ],
  );
}

const bodyOf = (id: string): string => `${id}-body`;

/** The drawing as an element; colours are attributes, so that a file needs nothing else. */
export function svg(drawing: Drawing, id: string, more: Attributes = {}): Element {
  const sheet = paper({ x: 0, y: 0, width: drawing.width, height: drawing.height });
  return rootElement(drawing, id, more, s("g", { id: bodyOf(id) }, [sheet, ...drawing.shapes]));
}

/** The same drawing once more on its page, by pointing at where it stands: a page need not carry it twice. */
export const svgAgain = (drawing: Drawing, id: string, first: string): Element =>
  rootElement(drawing, id, {}, s("use", { href: `#${bodyOf(first)}` }));

/** The drawing as a file of its own, well-formed XML. */
export const svgFile = (drawing: Drawing): string => {
  return xmlText(svg(drawing, "Drawing"));
};
