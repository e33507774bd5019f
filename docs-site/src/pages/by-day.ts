import { dayAfter } from "@plumbmark/core";
import { type Content, h } from "../html/html.js";
import { verdictState } from "../html/state.js";
import { table } from "../html/table.js";
import type { DocumentSummary } from "../site/document-summary.js";
import type { SiteWithDocuments } from "../site/site.js";

/** Nobody reads a longer calendar. */
const MOST = 400;

/** Days on which the same builds stand. */
interface Stretch {
  readonly from: string;
  /** Undefined where the last of them stay. */
  readonly to: string | undefined;
  readonly documents: readonly DocumentSummary[];
}

/** The calendar of all builds, cut where one comes or goes; days on which nobody stands are left out. */
function stretches(documents: readonly DocumentSummary[], most = MOST): readonly Stretch[] {
  const dated = documents.filter(({ stay }) => stay !== undefined);
  const starts = new Map<string, DocumentSummary[]>();
  const ends = new Map<string, DocumentSummary[]>();
  const put = (map: Map<string, DocumentSummary[]>, day: string, each: DocumentSummary): void => {
    const own = map.get(day);
    if (own) own.push(each);
    else map.set(day, [each]);
  };
  for (const each of dated) {
    put(starts, each.stay?.from ?? "", each);
    if (each.stay?.to !== undefined) put(ends, dayAfter(each.stay.to, 1), each);
  }
  const days = [...new Set([...starts.keys(), ...ends.keys()])].sort();
  const there = new Set<DocumentSummary>();
  const found: Stretch[] = [];
  for (const [index, from] of days.entries()) {
    for (const each of ends.get(from) ?? []) there.delete(each);
    for (const each of starts.get(from) ?? []) there.add(each);
    const next = days[index + 1];
    if (there.size > 0)
      found.push({ from, to: next === undefined ? undefined : dayAfter(next, -1), documents: [...there] });
    if (found.length === most) break;
  }
  return found;
}

/** A day that is broken at a hyphen is read as another. */
const day = (text: string): Content => h("span", { class: "whole" }, text);

const build = (document: DocumentSummary, { repository }: SiteWithDocuments): Content =>
  h("li", [
    h("a", { href: document.page }, document.title),
    ", ",
    document.venue === undefined
      ? h("em", "no venue stated")
      : (repository.surveys.byName.get(document.venue)?.title ?? document.venue),
    ", ",
    verdictState(document.entry),
  ]);

/** Which builds stand on which days. */
export function byDay(site: SiteWithDocuments): Content {
  const { documents } = site;
  const found = stretches(documents);
  const undated = documents.filter(({ stay, entry }) => stay === undefined && entry.build !== undefined);
  if (found.length === 0) return undefined;
  return [
    h("h2", { id: "By-day" }, "By day"),
    h(
      "div",
      { class: "rows by-day" },
      table(
        "Builds by day",
        ["Days", "Builds on site"],
        found.map(({ from, to, documents: there }) => [
          to === undefined ? ["from ", day(from)] : to === from ? day(from) : [day(from), " to ", day(to)],
          h(
            "ul",
            there.map((each) => build(each, site)),
          ),
        ]),
      ),
    ),
    found.length === MOST ? h("p", `No more than ${MOST} stretches of days are listed.`) : undefined,
    undated.length > 0
      ? h("p", [
          "Without days on site: ",
          undated.flatMap(({ page, title }, index) => [index > 0 ? ", " : undefined, h("a", { href: page }, title)]),
          ".",
        ])
      : undefined,
  ];
}
