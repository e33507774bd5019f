import { type Lot, type Promised, soundIn } from "@plumbmark/core";
import { nameAnchor } from "../html/anchor.js";
import { type Content, h } from "../html/html.js";
import { state } from "../html/state.js";
import { type TableColumn, table } from "../html/table.js";
import type { DocumentSummary } from "../site/document-summary.js";
import { type LotLine, lotLines } from "../site/lots.js";
import { ruleLinks, type SiteWithDocuments } from "../site/site.js";
import { itemsOf } from "./items-table.js";
import type { SitePage } from "./page.js";
import { partAnchor } from "./parts-page.js";
import { shapesOf } from "./stock-shapes.js";

const PATH = "stock.html";
const RULE = "stock.promised-twice";

/** Of a lot that thousands of builds take from, no more are listed. */
const MOST = 100;

export const STOCK_COLUMNS: readonly TableColumn[] = [
  "Lot",
  "Panel",
  "Batch",
  { title: "Panels", align: "right" },
  "Busiest day",
  { title: "Away then", align: "right" },
  { title: "Left then", align: "right" },
  "Taken by",
];

const UNSTATED = h("em", "not stated");
const OPEN = state(["open"], "cannot be told");

/** A day that is broken at a hyphen is read as another. */
const day = (text: string): Content => h("span", { class: "whole" }, text);

const days = ({ stay }: Promised): Content => {
  if (stay === undefined) return ["days ", UNSTATED];
  const { from, to } = stay;
  if (to === undefined) return ["from ", day(from)];
  return to === from ? day(from) : [day(from), " to ", day(to)];
};

/** One face that takes panels: its sheet, how many with spares, and when. */
const taker = (each: Promised, { page, title }: Pick<DocumentSummary, "page" | "title">): Content =>
  h("li", [
    h("a", { href: page }, title),
    `, face ${each.face}: `,
    each.count === undefined ? ["number ", UNSTATED] : `${each.count} panels`,
    ", ",
    days(each),
    each.draft ? "; a draft, not counted" : each.stay === undefined ? "; not counted" : undefined,
  ]);

function takers({ promises }: LotLine, sheets: ReadonlyMap<string, DocumentSummary>): Content {
  if (promises.length === 0) return "nobody";
  const items = promises.slice(0, MOST).flatMap((each): Content[] => {
    const sheet = sheets.get(each.file);
    return sheet ? [taker(each, sheet)] : [];
  });
  const more = promises.length - MOST;
  return [h("ul", items), more > 0 ? h("p", `${more} more take from it.`) : undefined];
}

const panels = (lot: Lot): Content =>
  lot.faulty === undefined || lot.faulty === 0
    ? String(lot.count)
    : [String(lot.count), h("small", ` ${lot.faulty} of them faulty`)];

const left = ({ lot, peak }: LotLine): Content => {
  if (!lot || peak === "open") return OPEN;
  const rest = soundIn(lot) - (peak?.count ?? 0);
  return rest < 0 ? h("b", `${-rest} short`) : String(rest);
};

const row = (line: LotLine, sheets: ReadonlyMap<string, DocumentSummary>, parts: ReadonlyMap<string, unknown>) => {
  const { name, lot, peak } = line;
  return {
    id: nameAnchor("Lot", name),
    cells: [
      h("code", name),
      lot === undefined
        ? "not in the stock list"
        : h(
            "code",
            parts.has(lot.panel) ? h("a", { href: `parts.html#${partAnchor(lot.panel)}` }, lot.panel) : lot.panel,
          ),
      lot?.batch ?? UNSTATED,
      lot === undefined ? UNSTATED : panels(lot),
      peak === "open" ? OPEN : (peak?.day ?? "none"),
      peak === "open" ? OPEN : String(peak?.count ?? 0),
      left(line),
      takers(line, sheets),
    ],
  };
};

/** What is on the shelf: every lot with its batch, who takes panels of it on which days, and the day on which most are away. */
export function stockPage(site: SiteWithDocuments): SitePage {
  const lines = lotLines(site);
  const sheets = new Map(site.documents.map((each) => [each.entry.file, each]));
  const rule = ruleLinks(site, PATH)(RULE);
  const content: Content = [
    h("p", [
      "A lot is one purchase of panels; a batch is the maker's: two batches of one panel may differ in colour. Panels and their spares, and everything else that is taken along, count as away on every day a build is on site, both ends included, and on the days out and back. What is faulty is in no number; drafts, and builds without days, are not counted. Each build is judged by ",
      rule === undefined ? RULE : h("a", { href: rule }, RULE),
      ".",
    ]),
    lines.length === 0
      ? h("p", "There is no stock list, and no build names a lot.")
      : h(
          "div",
          { class: "rows stock" },
          table(
            "Lots",
            STOCK_COLUMNS,
            lines.map((line) => row(line, sheets, site.repository.catalogue.parts)),
          ),
        ),
    shapesOf(site.shapes ?? []),
    itemsOf(site),
  ];
  return { path: PATH, title: "Stock", number: "0.10", content };
}
