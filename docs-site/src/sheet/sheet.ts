import { type Content, Html, h, textOf } from "../html/html.js";
import { countState, verdictState } from "../html/state.js";
import type { TitleCells } from "../html/title-block.js";
import type { SitePage } from "../pages/page.js";
import type { PublishedDocument } from "../site/published-document.js";
import type { Site } from "../site/site.js";
import { cautions } from "./cautions.js";
import { sheetSections } from "./sheet-sections.js";
import { sheetStylePath } from "./sheet-style.js";

const cellsOf = ({ entry, build }: PublishedDocument): TitleCells => {
  const text = (key: string): string => build?.reader.text(key) ?? "–";
  return [
    ["Revision", entry.revision === undefined ? "–" : String(entry.revision)],
    ["Status", entry.status ?? "–"],
    ["Verdict", verdictState(entry)],
    ...(build
      ? ([
          ["Venue", text("venue")],
          ["On site", text("on-site")],
          ["Prepared by", text("prepared-by")],
          ["Approved by", text("approved-by")],
          ["Practice", build.practice],
        ] as const)
      : []),
    ["File", entry.file],
  ];
};

const summary = ({ entry }: PublishedDocument): Content => [
  h("p", { class: "counts" }, [
    verdictState(entry),
    h("span", `${entry.counts.checks} checks`),
    ...(["holds", "fails", "open", "waived"] as const).flatMap((outcome) => [
      countState(outcome, entry.counts[outcome]),
      " ",
    ]),
  ]),
  h(
    "p",
    "The verdict is on this document: whether what it writes down meets the rules. It is no approval of the hang, the circuits or the work on site.",
  ),
  entry.status === "draft" ? h("p", "This is a draft: open checks do not count yet. Do not build from it.") : undefined,
];

interface Part {
  readonly id: string;
  readonly title: string;
  readonly content: Html;
}

interface Jump {
  readonly id: string;
  readonly title: Content;
}

const contents = (parts: readonly Jump[]) =>
  h("nav", { class: "contents", ariaLabel: "On this sheet" }, [
    h(
      "ul",
      parts.map(({ id, title }) => h("li", h("a", { href: `#${id}` }, title))),
    ),
  ]);

/** The document's own headings, so that lift plan and power-up are one step away. */
const ownHeadings = (text: string): readonly Jump[] =>
  [...text.matchAll(/<h3 id="([^"]*)">(.*?)<\/h3>/gsu)].map(([, id = "", title = ""]) => ({
    id,
    // What was markup within a heading is left out; its words are escaped already.
    title: new Html(title.replace(/<[^>]*>/gu, "")),
  }));

const HEADING = /^<h3 id="cautions">.*?<\/h3>/su;
const CAUTIONS = '<h3 id="cautions">Cautions of this document</h3>';
const OWN_CAUTIONS = /<h3 id="cautions">.*?<\/h3>.*?(?=<h3|<\/div>$)/su;

/** The author's own cautions stand with ours at the top; in their place is a word of where. */
function withoutCautions(parts: readonly Part[]): { readonly parts: readonly Part[]; readonly own: Html | undefined } {
  const found = OWN_CAUTIONS.exec(parts.find(({ id }) => id === "Document")?.content.text ?? "")?.[0];
  if (found === undefined) return { parts, own: undefined };
  const there = h("p", ["Cautions: ", h("a", { href: "#cautions" }, "at the top of this sheet"), "."]).text;
  const moved = (part: Part): Part =>
    part.id === "Document" ? { ...part, content: new Html(part.content.text.replace(found, () => there)) } : part;
  return { parts: parts.map(moved), own: h("div", { class: "prose" }, new Html(found.replace(HEADING, CAUTIONS))) };
}

/** The sheet of a build: verdict and cautions, then its sections in order. */
export function sheet(document: PublishedDocument, site: Site): SitePage {
  const all = sheetSections
    .map(({ id, title, content }) => ({ id, title, content: new Html(textOf(content(document, site))) }))
    .filter(({ content }) => content.text !== "");
  const { parts, own } = withoutCautions(all);
  const content: Content = [
    summary(document),
    parts.length > 1
      ? contents([
          ...(own ? [{ id: "cautions", title: "Cautions" }] : []),
          ...parts.flatMap((part) => [part, ...(part.id === "Document" ? ownHeadings(part.content.text) : [])]),
        ])
      : undefined,
    cautions(document, own),
    ...parts.map((part) => h("div", { class: "part" }, [h("h2", { id: part.id }, part.title), part.content])),
  ];
  return {
    path: document.page,
    title: document.title,
    number: document.number,
    cells: cellsOf(document),
    styles: [sheetStylePath(document)],
    content,
  };
}
