import { plainText, readMarkdown } from "@plumbmark/core";
import { guide } from "./generated/guide.js";
import { type Content, h } from "./html.js";
import type { Page } from "./page.js";
import { prose } from "./prose.js";

const FOLDER = "guide";
const PATH = `${FOLDER}/index.html`;

/** In the order to read them in; a page that is not listed comes after. */
const ORDER = [
  "house-standard",
  "rules-without-code",
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

const titleOf = (text: string): string => {
  const heading = readMarkdown(text).tree.children.find((node) => node.type === "heading");
  return heading ? plainText(heading) : "";
};

/** A link from one page of the guide to another. */
const resolve = (href: string): string | undefined => {
  const name = /^([a-z-]+)\.md$/u.exec(href)?.[1];
  return name !== undefined && guide.some((page) => page.name === name) ? `${name}.html` : undefined;
};

/** A guide quotes no build and shows none of its tables, drawings or pictures. */
const none = (): undefined => undefined;

function guidePage({ name, text }: (typeof guide)[number], index: number): Page {
  const title = titleOf(text);
  const content: Content = h(
    "div",
    { class: "prose" },
    prose(readMarkdown(text).tree, title, { link: resolve, quote: none, picture: none, figure: none }),
  );
  return { path: `${FOLDER}/${name}.html`, title, number: `3.${String(index + 1).padStart(2, "0")}`, content };
}

/** How to keep a house standard, and how to write rules of one's own. */
export function guidePages(): readonly Page[] {
  const items = pages.map(({ name, text }) => h("li", h("a", { href: `${name}.html` }, titleOf(text))));
  const content: Content = [
    h(
      "p",
      "How to keep a house standard, sign a waiver, and write rules nobody else has. Every sample is compiled and run with each release.",
    ),
    h("ol", items),
  ];
  return [{ path: PATH, title: "Guide", number: "3.00", content }, ...pages.map(guidePage)];
}
