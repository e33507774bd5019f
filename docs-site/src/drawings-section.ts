import type { Published } from "./documents.js";
import { drawingsOf } from "./drawings/drawings.js";
import { type Drawing, svg, svgAgain, svgFile } from "./drawings/shared/drawing.js";
import { type Content, type Html, h } from "./html.js";
import { Names } from "./names.js";
import { linkTo } from "./page.js";

interface Filed {
  readonly drawing: Drawing;
  /** Its own among the drawings of the sheet, fit for a file and an id. */
  readonly file: string;
}

const made = new WeakMap<Published, readonly Filed[]>();

/** The drawings of a sheet, made once however often they are shown. */
function filed(document: Published): readonly Filed[] {
  const known = made.get(document);
  if (known) return known;
  const { build, system } = document;
  const names = new Names();
  const own = build ? drawingsOf({ build, system }) : [];
  const all = own.map((drawing) => ({ drawing, file: names.take(drawing.name) }));
  made.set(document, all);
  return all;
}

const pathOf = ({ page }: Published, file: string): string =>
  `drawings/${page.replace(/^builds\//u, "").replace(/\.html$/u, "")}/${file}.svg`;

/** A drawing that scrolls by itself where the screen is narrower, with a link to its file. */
function figure(document: Published, { drawing, file }: Filed, again = false) {
  const href = linkTo(document.page, pathOf(document, file));
  return h("figure", { class: "drawn" }, [
    h(
      "section",
      { class: "wide", tabindex: 0, ariaLabel: `${drawing.title}${again ? ", in the document" : ""}` },
      again ? svgAgain(drawing, `Figure-${file}`, `Drawing-${file}`) : svg(drawing, `Drawing-${file}`),
    ),
    h("figcaption", h("a", { href }, `Open by itself: ${drawing.title}`)),
  ]);
}

/** Every drawing of the build. */
export const drawingsSection = (document: Published): Content => filed(document).map((each) => figure(document, each));

/** Every drawing as a file of its own, by path of the site. */
export const drawingFiles = (document: Published): ReadonlyMap<string, string> =>
  new Map(filed(document).map(({ drawing, file }) => [pathOf(document, file), svgFile(drawing)]));

const PREFIX = "drawings.";

const named = (document: Published, of: string): Filed | undefined =>
  of.startsWith(PREFIX) ? filed(document).find(({ drawing }) => drawing.name === of.slice(PREFIX.length)) : undefined;

/** The drawing that stands in place of a paragraph `[hang plot](calc:drawings.hang-plot-header)`. */
export function drawingInProse(document: Published): (of: string) => Html | undefined {
  const shown = new Set<string>();
  return (of) => {
    const found = named(document, of);
    // The second time it is a plain link: one id, one place.
    if (!found || shown.has(of)) return undefined;
    shown.add(of);
    return figure(document, found, true);
  };
}

/** Where a link to a drawing within a sentence leads: to its file. */
export function drawingLink(document: Published, href: string): string | undefined {
  const found = href.startsWith("calc:") ? named(document, href.slice("calc:".length)) : undefined;
  return found && linkTo(document.page, pathOf(document, found.file));
}
