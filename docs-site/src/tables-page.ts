import { type Register, sourcesOfTable, type Table } from "@plumbmark/calc";
import { anchor } from "./anchor.js";
import { type Content, h } from "./html.js";
import type { Page } from "./page.js";
import { sourceAnchor } from "./sources-page.js";
import { table } from "./table.js";

const rowsOf = (data: unknown): number =>
  data instanceof Map
    ? data.size
    : Array.isArray(data)
      ? data.length
      : typeof data === "object" && data !== null
        ? Object.keys(data).length
        : 1;

const row = (table: Table) => ({
  id: anchor("Table", table.id),
  cells: [
    [h("code", table.id), h("br"), table.title],
    table.holds,
    String(rowsOf(table.data)),
    sourcesOfTable(table).flatMap((id, index): Content[] => [
      index > 0 ? ", " : "",
      h("a", { href: sourceAnchor(id) }, id),
    ]),
  ],
});

/** Every table of figures, with its sources. */
export function tablesPage({ tables }: Register): Page {
  const content: Content = [
    h(
      "p",
      "Figures transcribed from standards, handbooks and makers' tables. Every constant of the computation is in one of them.",
    ),
    table("Tables", ["Table", "What it holds", "Rows", "Sources"], tables.map(row)),
  ];
  return { path: "tables.html", title: "Tables", number: "0.6", content };
}
