import type { Print, Value } from "@plumbmark/calc";
import type { Published } from "./documents.js";
import { powerOf, weightOf, worstOf } from "./figures.js";
import { type Content, h } from "./html.js";
import type { Page } from "./page.js";
import { rulesFrom, type Site } from "./site.js";
import { state, verdictState } from "./state.js";
import { type Column, table } from "./table.js";
import { togetherOf } from "./together.js";
import { marginText } from "./words.js";

const COLUMNS: readonly Column[] = [
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

const figure = (value: Value | undefined, print: Print): Content =>
  value === undefined ? "–" : value.known ? print(value.value, value.kind) : state(["open"], "open");

const worst = ({ entry }: Published, site: Site): Content => {
  const check = worstOf(entry.checks);
  if (check?.share === undefined) return "–";
  const href = rulesFrom(site, "index.html")(check.rule);
  const name = h("code", check.rule);
  return [`${marginText(check.share)}: `, href ? h("a", { href }, name) : name];
};

const row = (document: Published, site: Site): readonly Content[] => {
  const { entry, page, title, number, build, print } = document;
  return [
    h("a", { href: page }, title),
    verdictState(entry),
    number,
    entry.revision === undefined ? "–" : String(entry.revision),
    h("span", { class: "whole" }, entry.status ?? "–"),
    build?.reader.text("on-site") ?? "–",
    figure(build && weightOf(build), print),
    figure(build && powerOf(build), print),
    worst(document, site),
  ];
};

/** The register: every build with status, verdict, dates, weight, power and the check nearest its limit. */
export function register(site: Site): Page {
  const { documents, inspection } = site;
  const { totals } = inspection.record;
  const content: Content = [
    h("p", `${totals.documents} documents: ${totals.ready} ready, ${totals["not-ready"]} not ready.`),
    table(
      "Builds",
      COLUMNS,
      documents.map((each) => row(each, site)),
    ),
    h(
      "p",
      h(
        "small",
        "Weight and power are those of the faces: panels at their maximum, with what the faces carry. The worst margin is that of the check nearest its limit or farthest over it; what is only matched, such as a plug and its outlet, has none.",
      ),
    ),
    togetherOf(site),
  ];
  return { path: "index.html", title: "Register of builds", number: "0.1", content };
}
