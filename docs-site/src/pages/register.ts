import type { Verdict } from "@plumbmark/core";
import { marginText } from "../html/figure-text.js";
import { type Content, h } from "../html/html.js";
import { state, verdictState } from "../html/state.js";
import { type TableColumn, table } from "../html/table.js";
import type { DocumentSummary, SummaryFigure } from "../site/document-summary.js";
import { ruleLinks, type Site, type SiteWithDocuments } from "../site/site.js";
import { wishesOf } from "../wishes/wish-pages.js";
import { byDay } from "./by-day.js";
import type { SitePage } from "./page.js";
import { togetherOf } from "./together.js";

export const REGISTER_COLUMNS: readonly TableColumn[] = [
  "Build",
  "Verdict",
  "Sheet",
  { title: "Rev.", align: "right" },
  "Status",
  "On site",
  { title: "Weight", align: "right" },
  { title: "Power", align: "right" },
  "Worst margin",
];

const figure = (value: SummaryFigure | undefined): Content =>
  value === undefined ? "–" : value === "open" ? state(["open"], "open") : value.text;

const worst = ({ worst: check }: DocumentSummary, site: Site): Content => {
  if (check?.share === undefined) return "–";
  const href = ruleLinks(site, "index.html")(check.rule);
  const name = h("code", check.rule);
  return [`${marginText(check.share)}: `, href ? h("a", { href }, name) : name];
};

const row = (document: DocumentSummary, site: Site): readonly Content[] => {
  const { entry, page, title, number } = document;
  return [
    h("a", { href: page }, title),
    verdictState(entry),
    number,
    entry.revision === undefined ? "–" : String(entry.revision),
    h("span", { class: "whole" }, entry.status ?? "–"),
    document.onSite ?? "–",
    figure(document.weight),
    figure(document.power),
    worst(document, site),
  ];
};

/** The register: every build with status, verdict, dates, weight, power and the check nearest its limit. */
export function registerPage(site: SiteWithDocuments): SitePage {
  const { documents } = site;
  const of = (verdict: Verdict): number => documents.filter(({ entry }) => entry.verdict === verdict).length;
  const drafts = of("draft");
  const content: Content = [
    h(
      "p",
      `${documents.length} documents: ${of("ready")} ready, ${drafts > 0 ? `${drafts} ${drafts === 1 ? "draft" : "drafts"}, ` : ""}${of("not ready")} not ready.`,
    ),
    h(
      "div",
      { class: "rows register" },
      table(
        "Builds",
        REGISTER_COLUMNS,
        documents.map((each) => row(each, site)),
      ),
    ),
    h(
      "p",
      h(
        "small",
        "Weight is all that the house bears, rounded up: of what hangs, panels with what they carry, cables, bars and the hangs themselves; of what stands or leans, the panels with what they carry. Its parts stand on the hang plots of the sheet. Power is that of the panels at their maximum. The worst margin is that of the check nearest its limit or farthest over it; what is only matched, such as a plug and its outlet, has none.",
      ),
    ),
    wishesOf(site),
    byDay(site),
    togetherOf(site),
  ];
  return { path: "index.html", title: "Register of builds", number: "0.1", content };
}
