import { type Markdown, plainText, readMarkdown } from "@plumbmark/core";
import { guide } from "../generated/guide.js";
import { type Content, h } from "../html/html.js";
import { prose } from "../prose/prose.js";
import { onceFor } from "../site/once-for.js";
import type { SitePage } from "./page.js";

const FOLDER = "guide";
const PATH = `${FOLDER}/index.html`;

/** The parts of the guide, with their pages in the order to read them in; a page that is not listed comes last. */
const PARTS = [
  {
    title: "Writing a document",
    says: "For whoever writes build documents, parts and surveys. No programming is needed.",
    pages: [
      "installing",
      "your-first-build",
      "writing-a-part",
      "surveying-a-venue",
      "quantities-and-guesses",
      "reading-a-report",
      "changing-a-build",
      "approving",
      "drafting-from-a-wish",
      "editors",
      "moving-to-surveys",
    ],
  },
  {
    title: "Keeping a house standard, writing rules",
    says: "For whoever decides what has to be met, signs waivers, or writes rules nobody else has.",
    pages: [
      "house-standard",
      "rules-without-code",
      "waivers",
      "writing-a-rule",
      "settings",
      "sources-and-working",
      "testing",
      "over-the-repository",
      "holdings",
      "publishing-a-plugin",
      "living-in-a-repository",
    ],
  },
] as const;

const ORDER: readonly string[] = PARTS.flatMap((part) => [...part.pages]);

const place = (name: string): number => (ORDER.includes(name) ? ORDER.indexOf(name) : ORDER.length);

const pages = guide.toSorted((one, other) => place(one.name) - place(other.name));

/** Pages by part; what is listed in none belongs to the last. */
const pagesByPart = PARTS.map((part, index) => ({
  ...part,
  pages: pages.filter(
    ({ name }) =>
      (part.pages as readonly string[]).includes(name) || (index === PARTS.length - 1 && !ORDER.includes(name)),
  ),
}));

type Written = (typeof guide)[number];

type Tree = Markdown["tree"];

/** What a sample that is laid over a document is marked with. */
const LAID_OVER = /^(?:change|try):/u;

/** A sample that is a file stands below the file's name: readers have to put it there. */
const withFileNames = (tree: Tree): Tree => ({
  ...tree,
  children: tree.children.flatMap((node) => {
    if (node.type !== "code" || !node.meta) return [node];
    const file = { type: "inlineCode" as const, value: node.meta.replace(LAID_OVER, "") };
    const words = LAID_OVER.test(node.meta) ? [{ type: "text" as const, value: "Changes in " }] : [];
    return [{ type: "paragraph" as const, children: [...words, file] }, node];
  }),
});

/** The guide is the same for every site. */
const treeOf = onceFor(({ text }: Written) => withFileNames(readMarkdown(text).tree));

const titleOf = onceFor((page: Written): string => {
  const heading = treeOf(page).children.find((node) => node.type === "heading");
  return heading ? plainText(heading) : "";
});

/** A link from one page of the guide to another, or to the reference. */
const resolve = (href: string): string | undefined => {
  const name = /^([a-z-]+)\.md$/u.exec(href)?.[1];
  if (/^\.\.\/reference\/[a-z-]+\.html(?:#|$)/u.test(href)) return href;
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

const listed = (page: Written): Content => h("li", h("a", { href: `${page.name}.html` }, titleOf(page)));

/** How to write documents, how to keep a house standard, and how to write rules of one's own. */
export function guidePages(): readonly SitePage[] {
  const content: Content = [
    h("p", "Two parts. Every sample is a file or a command that is run with each release."),
    h("p", ["What every key means: the ", h("a", { href: "../reference/index.html" }, "reference"), "."]),
    pagesByPart.map(({ title, says, pages: of }) => [h("h2", title), h("p", says), h("ol", of.map(listed))]),
  ];
  return [{ path: PATH, title: "Guide", number: "3.00", content }, ...pages.map((page) => guidePage(page))];
}
