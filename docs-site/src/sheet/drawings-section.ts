import { failuresAt } from "@plumbmark/core";
import type { Element } from "hast";
import { drawingsOf } from "../drawings/drawings.js";
import { type Drawing, SHEET_WIDTH, stamped, svg, svgAgain, svgFile } from "../drawings/shared/drawing.js";
import { type Content, h } from "../html/html.js";
import { linkTo } from "../pages/page.js";
import { identityLine, noticeOf } from "../site/identity.js";
import { Names } from "../site/names.js";
import type { PublishedDocument } from "../site/published-document.js";
import type { Site } from "../site/site.js";

interface Filed {
  readonly drawing: Drawing;
  /** Its own among the drawings of the sheet, fit for a file and an id. */
  readonly file: string;
}

const made = new WeakMap<PublishedDocument, readonly Filed[]>();

/** The drawings of a sheet, made once however often they are shown. */
function filed(document: PublishedDocument, site: Site): readonly Filed[] {
  const known = made.get(document);
  if (known) return known;
  const { build, system } = document;
  const names = new Names();
  const own = build ? drawingsOf({ build, system, failures: failuresAt(document.entry) }) : [];
  const notice = noticeOf(document);
  const stamp = identityLine(document, site);
  const all = own.map((drawing) => ({ drawing: stamped(drawing, stamp, notice), file: names.take(drawing.name) }));
  made.set(document, all);
  return all;
}

const pathOf = ({ page }: PublishedDocument, file: string): string =>
  `drawings/${page.replace(/^builds\//u, "").replace(/\.html$/u, "")}/${file}.svg`;

/** A drawing that scrolls by itself where the screen is narrower, with a link to its file. */
function figure(document: PublishedDocument, { drawing, file }: Filed, again = false) {
  const href = linkTo(document.page, pathOf(document, file));
  const scrolls = drawing.width >= SHEET_WIDTH;
  const own = again ? {} : { id: `Drawn-${file}` };
  return h("figure", { class: scrolls ? ["drawn"] : ["drawn", "compact"], ...own }, [
    scrolls ? h("p", { class: "hint" }, "The drawing scrolls sideways.") : undefined,
    h(
      "section",
      {
        class: drawing.opens === "right" ? ["wide", "from-right"] : ["wide"],
        tabindex: 0,
        ariaLabel: `${drawing.title}${again ? ", in the document" : ""}`,
      },
      again ? svgAgain(drawing, `Figure-${file}`, `Drawing-${file}`) : svg(drawing, `Drawing-${file}`),
    ),
    h("figcaption", h("a", { href }, `Open by itself: ${drawing.title}`)),
  ]);
}

/** Jump links to what is looked for most: the face from behind, where the plugs are. */
const jumps = (all: readonly Filed[]): Content => {
  const rear = all.filter(({ drawing }) => drawing.name.endsWith("-rear"));
  return rear.length === 0
    ? undefined
    : h("nav", { class: "contents", ariaLabel: "Drawings from behind" }, [
        h("p", "From behind:"),
        h(
          "ul",
          rear.map(({ drawing, file }) =>
            h("li", h("a", { href: `#Drawn-${file}` }, drawing.title.replace(", from the rear", ""))),
          ),
        ),
      ]);
};

/** Every drawing of the build. */
export function drawingsSection(document: PublishedDocument, site: Site): Content {
  const all = filed(document, site);
  return all.length === 0 ? undefined : [jumps(all), ...all.map((each) => figure(document, each))];
}

/** Every drawing as a file of its own, by path of the site. */
export const drawingFiles = (document: PublishedDocument, site: Site): ReadonlyMap<string, string> =>
  new Map(filed(document, site).map(({ drawing, file }) => [pathOf(document, file), svgFile(drawing)]));

const PREFIX = "drawings.";

const named = (document: PublishedDocument, site: Site, of: string): Filed | undefined =>
  of.startsWith(PREFIX)
    ? filed(document, site).find(({ drawing }) => drawing.name === of.slice(PREFIX.length))
    : undefined;

/** The drawing that stands in place of a paragraph `[hang plot](calc:drawings.hang-plot-header)`. */
export function drawingInProse(document: PublishedDocument, site: Site): (of: string) => Element | undefined {
  const shown = new Set<string>();
  return (of) => {
    const found = named(document, site, of);
    // The second time it is a plain link: one id, one place.
    if (!found || shown.has(of)) return undefined;
    shown.add(of);
    return figure(document, found, true);
  };
}

/** Where a link to a drawing within a sentence leads: to its file. */
export function drawingLink(document: PublishedDocument, site: Site, href: string): string | undefined {
  const found = href.startsWith("calc:") ? named(document, site, href.slice("calc:".length)) : undefined;
  return found && linkTo(document.page, pathOf(document, found.file));
}
