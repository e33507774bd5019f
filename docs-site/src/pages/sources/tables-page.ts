import { type Register, type RegisterTable, sources, sourcesOfTable } from "@plumbmark/calc";
import { anchor } from "../../html/anchor.js";
import { type Content, h } from "../../html/html.js";
import { table } from "../../html/table.js";
import type { SitePage } from "../page.js";
import { sourceAnchor } from "./sources-page.js";
import { tableFigures } from "./table-rows.js";

const sourceLink = (id: string): Content => h("a", { href: sourceAnchor(id) }, id);

/** A source a row names leads to the page of sources. */
const cell = (words: string): Content => (Object.hasOwn(sources, words) ? sourceLink(words) : words);

/** A table with all its rows; its place is within the part that unfolds, so that a link to it unfolds it. */
function folded(own: RegisterTable): Content {
  const { columns, rows } = tableFigures(own.data, own.holds);
  const from = sourcesOfTable(own);
  return h("details", { class: ["topic", "figures"] }, [
    h("summary", [h("h2", own.title), ` ${rows.length} ${rows.length === 1 ? "row" : "rows"}`]),
    h("div", { id: anchor("Table", own.id) }, [
      h("p", [h("code", own.id), `: ${own.holds}.`]),
      from.length === 0
        ? h("p", "Its rows name their sources.")
        : h("p", ["Sources: ", ...from.flatMap((id, index) => [index > 0 ? ", " : "", sourceLink(id)])]),
      table(
        own.title,
        columns,
        rows.map((row) => row.map(cell)),
      ),
    ]),
  ]);
}

/** Every table of figures with its rows and its sources. */
export function tablesPage({ tables }: Register): SitePage {
  const content: Content = [
    h(
      "p",
      "Figures transcribed from standards, handbooks and makers' tables. Every constant of the computation is in one of them. Each unfolds; figures that are kept in SI units say so.",
    ),
    ...tables.map(folded),
  ];
  return { path: "tables.html", title: "Tables", number: "0.6", content };
}
