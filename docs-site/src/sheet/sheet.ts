import type { Element, ElementContent } from "hast";
import { toString as wordsOf } from "hast-util-to-string";
import { weightText } from "../drawings/shared/value-text.js";
import { type Content, childrenOf, h } from "../html/html.js";
import { countState, verdictState } from "../html/state.js";
import type { TitleCells } from "../html/title-block.js";
import type { SitePage } from "../pages/page.js";
import { weightOf } from "../site/build-figures.js";
import { noticeOf } from "../site/identity.js";
import type { PublishedDocument } from "../site/published-document.js";
import type { Site } from "../site/site.js";
import { cautions } from "./cautions.js";
import { sheetSections } from "./sheet-sections.js";
import { sheetStylePath } from "./sheet-style.js";

const cellsOf = ({ entry, build, system }: PublishedDocument): TitleCells => {
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
          ["Approved by", approvedBy(build)],
          ["Code of the content", entry.approval?.code ?? "–"],
          ["Weight", weightText(weightOf(build), system)],
          ["Practice", build.practice],
        ] as const)
      : []),
    ["File", entry.file],
  ];
};

/** What must not be built from says so before anything else, as loudly on paper as on a screen. */
const notice = (document: PublishedDocument): Content => {
  const words = noticeOf(document);
  return words === undefined ? undefined : h("p", { class: "notice" }, words);
};

/** Who approved it and when; that it was of another content is told by the verdict. */
function approvedBy({ approval: { by, on, state } }: NonNullable<PublishedDocument["build"]>): string {
  if (!by) return "–";
  return `${by.name}${on === undefined ? "" : `, ${on}`}${state === "changed" ? ", of another content" : ""}`;
}

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
  entry.status === "draft" ? h("p", "This is a draft: open checks do not count yet.") : undefined,
];

interface Part {
  readonly id: string;
  readonly title: string;
  readonly content: readonly ElementContent[];
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

const isHeading = (node: ElementContent): node is Element => node.type === "element" && node.tagName === "h3";

/** The document's own headings, so that lift plan and power-up are one step away. */
const ownHeadings = (nodes: readonly ElementContent[]): readonly Jump[] =>
  nodes.flatMap((node): readonly Jump[] => {
    if (node.type !== "element") return [];
    const { id } = node.properties;
    return isHeading(node) && id ? [{ id: String(id), title: wordsOf(node) }] : ownHeadings(node.children);
  });

const CAUTIONS = "cautions";

interface Divided {
  readonly own: readonly ElementContent[];
  readonly rest: readonly ElementContent[];
}

/** Takes the section under the heading of cautions out of an author's prose; a word of where it is stays in its place. */
function withoutCautions(nodes: readonly ElementContent[]): Divided | undefined {
  const from = nodes.findIndex((node) => isHeading(node) && node.properties.id === CAUTIONS);
  if (from < 0) return undefined;
  const length = nodes.slice(from + 1).findIndex(isHeading);
  const to = length < 0 ? nodes.length : from + 1 + length;
  const there = h("p", ["Cautions: ", h("a", { href: `#${CAUTIONS}` }, "at the top of this sheet"), "."]);
  return {
    own: [h("h3", { id: CAUTIONS }, "Cautions of this document"), ...nodes.slice(from + 1, to)],
    rest: [...nodes.slice(0, from), there, ...nodes.slice(to)],
  };
}

/** The author's own cautions stand with ours at the top. */
function moveCautions(parts: readonly Part[]): { readonly parts: readonly Part[]; readonly own: Element | undefined } {
  const [prose] = parts.find(({ id }) => id === "Document")?.content ?? [];
  const divided = prose?.type === "element" ? withoutCautions(prose.children) : undefined;
  if (!divided) return { parts, own: undefined };
  const moved = (part: Part): Part =>
    part.id === "Document" ? { ...part, content: [h("div", { class: "prose" }, divided.rest)] } : part;
  return { parts: parts.map(moved), own: h("div", { class: "prose" }, divided.own) };
}

/** The sheet of a build: verdict and cautions, then its sections in order. */
export function sheet(document: PublishedDocument, site: Site): SitePage {
  const all = sheetSections
    .map(({ id, title, content }) => ({ id, title, content: childrenOf(content(document, site)) }))
    .filter(({ content }) => content.length > 0);
  const { parts, own } = moveCautions(all);
  const content: Content = [
    notice(document),
    summary(document),
    parts.length > 1
      ? contents([
          ...(own ? [{ id: CAUTIONS, title: "Cautions" }] : []),
          ...parts.flatMap((part) => [part, ...(part.id === "Document" ? ownHeadings(part.content) : [])]),
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
