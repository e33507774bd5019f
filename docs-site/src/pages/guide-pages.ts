import { plainText, readMarkdown } from "@plumbmark/core";
import { guide } from "../generated/guide.js";
import { type Content, h } from "../html/html.js";
import { prose } from "../prose/prose.js";
import { onceFor } from "../site/once-for.js";
import type { SitePage } from "./page.js";

const FOLDER = "guide";
const PATH = `${FOLDER}/index.html`;

/** In the order to read them in; a page that is not listed comes after. */
const ORDER = [
  "house-standard",
  "rules-without-code",
  "approving",
  "waivers",
  "writing-a-rule",
  "settings",
  "sources-and-working",
  "testing",
  "over-the-repository",
  "publishing-a-plugin",
  "living-in-a-repository",
];

const place = (name: string): number => (ORDER.includes(name) ? ORDER.indexOf(name) : ORDER.length);

const pages = guide.toSorted((one, other) => place(one.name) - place(other.name));

type Written = (typeof guide)[number];

/** The guide is the same for every site. */
const treeOf = onceFor(({ text }: Written) => readMarkdown(text).tree);

const titleOf = onceFor((page: Written): string => {
  const heading = treeOf(page).children.find((node) => node.type === "heading");
  return heading ? plainText(heading) : "";
});

/** A link from one page of the guide to another. */
const resolve = (href: string): string | undefined => {
  const name = /^([a-z-]+)\.md$/u.exec(href)?.[1];
  return name !== undefined && guide.some((page) => page.name === name) ? `${name}.html` : undefined;
};

/** A guide quotes no build and shows none of its tables, drawings or pictures. */
const none = (): undefined => undefined;

const guidePage = onceFor((page: Written): SitePage => {
  const { name } = page;
  const title = titleOf(page);
  const named = { link: resolve, quote: none, picture: none, figure: none };
  const content: Content = h("div", { class: "prose" }, prose(treeOf(page), title, named));
  const number = `3.${String(pages.indexOf(page) + 1).padStart(2, "0")}`;
  return { path: `${FOLDER}/${name}.html`, title, number, content };
});

/** How to keep a house standard, and how to write rules of one's own. */
export function guidePages(): readonly SitePage[] {
  const items = pages.map((page) => h("li", h("a", { href: `${page.name}.html` }, titleOf(page))));
  const content: Content = [
    h(
      "p",
      "How to keep a house standard, sign a waiver, and write rules nobody else has. Every sample is compiled and run with each release.",
    ),
    h("ol", items),
  ];
  return [{ path: PATH, title: "Guide", number: "3.00", content }, ...pages.map((page) => guidePage(page))];
}
