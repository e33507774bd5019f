import type { Part } from "@plumbmark/core";
import { nameAnchor } from "../html/anchor.js";
import { type Content, h } from "../html/html.js";
import { table } from "../html/table.js";
import type { DocumentSummary } from "../site/document-summary.js";
import type { Site, SiteWithDocuments } from "../site/site.js";
import type { SitePage } from "./page.js";

/** The parts of the catalogue by kind and name. */
export const partsOf = ({ repository }: Site): readonly Part[] =>
  [...repository.catalogue.parts.values()].sort((one, other) =>
    one.kind === other.kind ? (one.name < other.name ? -1 : 1) : one.kind < other.kind ? -1 : 1,
  );

export const partAnchor = (name: string): string => nameAnchor("Part", name);

function usersOf({ documents }: SiteWithDocuments): ReadonlyMap<string, readonly DocumentSummary[]> {
  const users = new Map<string, DocumentSummary[]>();
  for (const document of documents)
    for (const text of document.parts) {
      const known = users.get(text);
      if (known) known.push(document);
      else users.set(text, [document]);
    }
  return users;
}

/** Of a part that thousands of builds use, no more sheets are listed. */
const MOST = 100;

function links(documents: readonly DocumentSummary[]): Content {
  const more = documents.length - MOST;
  return [
    documents
      .slice(0, MOST)
      .map(({ page, number, title }, index) => [index > 0 ? ", " : "", h("a", { href: page, title }, number)]),
    more > 0 ? ` and ${more} more` : undefined,
  ];
}

/** What is written of a part, one line each. */
const facts = ({ data }: Part): Content =>
  Object.entries(data)
    .filter(([key]) => key !== "kind")
    .map(
      ([key, value]): Content => [
        h("code", key),
        ` ${typeof value === "object" ? JSON.stringify(value) : String(value)}`,
        h("br"),
      ],
    );

export const PARTS_COLUMNS = ["Part", "Kind", "What is written of it", "File", "On sheets"];

/** Every part of the catalogue, what is written of it, and the sheets it is on. */
export function partsPage(site: SiteWithDocuments): SitePage {
  const users = usersOf(site);
  const rows = partsOf(site).map((part) => ({
    id: partAnchor(part.name),
    cells: [h("code", part.name), part.kind, facts(part), part.file, links(users.get(part.name) ?? [])],
  }));
  return {
    path: "parts.html",
    title: "Parts",
    number: "0.7",
    content: [
      h("p", `${rows.length} parts are in the catalogue.`),
      h("div", { class: "rows part-rows" }, table("Parts", PARTS_COLUMNS, rows)),
    ],
  };
}
