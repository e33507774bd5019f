import { isMarginBar, marginMarks } from "../drawings/margin-bar.js";
import { type Content, findElement, h, pageText } from "../html/html.js";
import { type TitleCells, titleBlock } from "../html/title-block.js";
import { MENU } from "./nav.js";

export interface SitePage {
  readonly path: string;
  readonly title: string;
  /** Its number in the set: `0.` general, `1.` builds, `2.` rules. */
  readonly number?: string;
  /** Further cells of its title block. */
  readonly cells?: TitleCells;
  /** Scripts of ours it loads, as paths of the site; every other page runs none. */
  readonly scripts?: readonly string[];
  /** Further style sheets of ours, as paths of the site. */
  readonly styles?: readonly string[];
  readonly content: Content;
}

export interface PageContext {
  readonly standard: string;
  readonly today: string;
}

/** From a page to a path of the site, so that links work without a web server. */
export const linkTo = (page: string, path: string): string => "../".repeat(page.split("/").length - 1) + path;

const DEFERS =
  "This inspection supports, and does not replace, local codes, the maker's instructions and the judgement of licensed electricians, engineers and qualified riggers.";

/** Nothing is loaded but what lies in the folder of the site; a script only where the page has one of ours. */
const policy = (scripts: readonly string[]): string =>
  [
    "default-src 'none'",
    "style-src 'self'",
    "img-src 'self'",
    ...(scripts.length > 0 ? ["script-src 'self'"] : []),
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");

const headOf = ({ path, title, scripts = [], styles = [] }: SitePage, standard: string) =>
  h("head", [
    h("meta", { charset: "utf-8" }),
    h("meta", { httpEquiv: "Content-Security-Policy", content: policy(scripts) }),
    h("meta", { name: "referrer", content: "no-referrer" }),
    h("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
    h("title", `${title} – ${standard}`),
    ...["style.css", ...styles].map((style) => h("link", { rel: ["stylesheet"], href: linkTo(path, style) })),
    ...scripts.map((script) => h("script", { src: linkTo(path, script), defer: true })),
  ]);

const menu = (path: string) =>
  h("nav", { class: "menu", ariaLabel: "Site" }, [
    h(
      "ul",
      MENU.map(([target, text]) =>
        h("li", h("a", { href: linkTo(path, target), ...(target === path ? { ariaCurrent: "page" } : {}) }, text)),
      ),
    ),
  ]);

/** A whole page as HTML. Ids of ours begin with a capital: those of an author's headings never do. */
export function pageHtml(page: SitePage, { standard, today }: PageContext): string {
  const { path, title, number, cells = [], content } = page;
  const marks = findElement(content, isMarginBar) ? marginMarks : undefined;
  const body = h("body", [
    marks,
    h("a", { class: "skip", href: "#Main" }, "Go to the content"),
    h("header", { class: "top" }, [h("p", { class: "standard" }, standard), menu(path)]),
    h("main", { id: "Main" }, [
      titleBlock(title, [
        ...(number === undefined ? [] : [["Sheet", number] as const]),
        ...cells,
        ["Inspected", today],
      ]),
      h("div", { class: "body" }, content),
    ]),
    h("footer", [h("p", `Inspected on ${today}. ${DEFERS}`)]),
  ]);
  return pageText(h("html", { lang: "en" }, [headOf(page, standard), body]));
}
