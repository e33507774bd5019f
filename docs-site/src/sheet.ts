import { cautions } from "./cautions.js";
import type { Published } from "./documents.js";
import { type Content, Html, h, textOf } from "./html.js";
import type { Page } from "./page.js";
import { sheetSections } from "./sheet-sections.js";
import type { Site } from "./site.js";
import { countState, verdictState } from "./state.js";
import type { Cells } from "./title-block.js";

const cellsOf = ({ entry, build }: Published): Cells => {
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

const summary = ({ entry }: Published): Content => [
  h("p", { class: "counts" }, [
    verdictState(entry),
    h("span", `${entry.counts.checks} checks`),
    ...(["holds", "fails", "open", "waived"] as const).flatMap((outcome) => [
      countState(outcome, entry.counts[outcome]),
      " ",
    ]),
  ]),
  entry.status === "draft" ? h("p", "This is a draft: open checks do not count yet. Do not build from it.") : undefined,
];

const contents = (parts: readonly { readonly id: string; readonly title: string }[]) =>
  h("nav", { class: "contents", ariaLabel: "On this sheet" }, [
    h(
      "ul",
      parts.map(({ id, title }) => h("li", h("a", { href: `#${id}` }, title))),
    ),
  ]);

/** The sheet of a build: verdict and cautions, then its sections in order. */
export function sheet(document: Published, site: Site): Page {
  const parts = sheetSections
    .map(({ id, title, content }) => ({ id, title, content: new Html(textOf(content(document, site))) }))
    .filter(({ content }) => content.text !== "");
  const content: Content = [
    summary(document),
    parts.length > 1 ? contents(parts) : undefined,
    cautions(document),
    ...parts.map((part) => h("div", { class: "part" }, [h("h2", { id: part.id }, part.title), part.content])),
  ];
  return { path: document.page, title: document.title, number: document.number, cells: cellsOf(document), content };
}
