import type { ElementContent, Root } from "hast";
import { toHtml } from "hast-util-to-html";
import { h } from "hastscript";

export type Content = ElementContent | string | undefined | readonly Content[];

/** Content in the form hastscript takes: no gaps, no lists in lists. */
export const flat = (content: Content): (ElementContent | string)[] =>
  content === undefined
    ? []
    : typeof content === "string"
      ? [content]
      : Array.isArray(content)
        ? content.flatMap(flat)
        : [content as ElementContent];

export interface Page {
  readonly path: string;
  readonly title: string;
  readonly content: Content;
}

export interface Frame {
  readonly standard: string;
  readonly today: string;
}

/** From a page to a path of the site, so that links work without a web server. */
export const linkTo = (page: string, path: string): string => "../".repeat(page.split("/").length - 1) + path;

const DEFERS =
  "This inspection supports, and does not replace, local codes, the maker's instructions and the judgement of licensed electricians, engineers and qualified riggers.";

/** A whole page as HTML. Ids of ours begin with a capital: those of an author's headings never do. */
export function pageHtml({ path, title, content }: Page, { standard, today }: Frame): string {
  const to = (target: string, text: string) => h("a", { href: linkTo(path, target) }, text);
  const head = h("head", [
    h("meta", { charSet: "utf-8" }),
    h("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
    h("title", `${title} – ${standard}`),
    h("link", { rel: ["stylesheet"], href: linkTo(path, "style.css") }),
  ]);
  const body = h("body", [
    h("a", { class: "skip", href: "#Main" }, "Go to the content"),
    h("header", [
      h("p", { class: "standard" }, standard),
      h("nav", { ariaLabel: "Site" }, [to("index.html", "Register"), " ", to("rules/index.html", "Rules")]),
    ]),
    h("main", { id: "Main" }, [h("h1", title), ...flat(content)]),
    h("footer", [h("p", `Inspected on ${today}. ${DEFERS}`)]),
  ]);
  const root: Root = { type: "root", children: [{ type: "doctype" }, h("html", { lang: "en" }, [head, body])] };
  return `${toHtml(root, { upperDoctype: true })}\n`;
}
