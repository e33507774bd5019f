import type { WaiverEntry } from "@plumbmark/core";
import { type Content, h } from "../html/html.js";
import { state } from "../html/state.js";
import { table } from "../html/table.js";
import type { DocumentSummary } from "../site/document-summary.js";
import { ruleLinks, type Site, type SiteWithDocuments } from "../site/site.js";
import type { SitePage } from "./page.js";
import { linkTo } from "./page.js";

const PATH = "waivers.html";

const COLUMNS = ["Build", "Line", "Rule", "Place", "Accepts", "Because", "Signed by", "Until", "State", "Excuses"];

/** What asks for work comes first. */
const ORDER: readonly WaiverEntry["state"][] = ["exceeded", "refused", "incomplete", "expired", "unused", "in force"];

const LOOKS: Readonly<Record<WaiverEntry["state"], readonly string[]>> = {
  "in force": ["waived"],
  expired: ["fails", "shall"],
  unused: ["fails", "should"],
  incomplete: ["open"],
  refused: ["fails", "shall"],
  exceeded: ["fails", "shall"],
};

const ruleOf = (site: Site, id: string | undefined): Content => {
  if (id === undefined) return "not stated";
  const href = ruleLinks(site, PATH)(id);
  return href ? h("a", { href }, h("code", id)) : h("code", id);
};

const row = (site: Site, { page, title }: DocumentSummary, waiver: WaiverEntry): readonly Content[] => [
  h("a", { href: linkTo(PATH, page) }, title),
  String(waiver.at.line),
  ruleOf(site, waiver.rule),
  waiver.where === undefined ? "the whole document" : h("code", waiver.where),
  waiver.of === "open" ? "that it cannot be told" : (waiver.accepts ?? "–"),
  waiver.because ?? "not stated",
  waiver.by ?? "not stated",
  waiver.until ?? "not stated",
  state(LOOKS[waiver.state], waiver.state),
  waiver.excuses.length === 0
    ? "nothing"
    : waiver.excuses.flatMap((path) => [h("code", path || "the document"), h("br")]),
];

/** The register of waivers: every signed exception of every build, with its last day and what it excuses. */
export function waiversPage(site: SiteWithDocuments): SitePage {
  const all = site.documents.flatMap((document) =>
    (document.entry.waivers ?? []).map((waiver) => ({ document, waiver })),
  );
  const sorted = all.toSorted(
    (one, other) =>
      ORDER.indexOf(one.waiver.state) - ORDER.indexOf(other.waiver.state) ||
      (one.waiver.until ?? "").localeCompare(other.waiver.until ?? ""),
  );
  const content: Content = [
    h(
      "p",
      "A waiver is a signed, dated exception to one rule. What it excuses stays on the sheet of its build, marked as waived.",
    ),
    sorted.length === 0
      ? h("p", "No build has a waiver.")
      : table(
          "Waivers, those that ask for work first",
          COLUMNS,
          sorted.map(({ document, waiver }) => row(site, document, waiver)),
        ),
  ];
  return { path: PATH, title: "Waivers", number: "0.8", content };
}
