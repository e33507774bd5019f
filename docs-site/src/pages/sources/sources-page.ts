import type { Register, RegisterEntry, Source } from "@plumbmark/calc";
import { anchor } from "../../html/anchor.js";
import { type Content, h } from "../../html/html.js";
import { table } from "../../html/table.js";
import { linkTo, type SitePage } from "../page.js";

const PATH = "sources.html";

/** Where a source stands on the page of sources. */
export const sourceAnchor = (id: string): string => `${PATH}#${anchor("Source", id)}`;

const BASIS: Readonly<Record<Source["basis"], string>> = {
  published: "seen in print, often in a restatement",
  memory: "from memory: look it up before relying on it",
  practice: "common practice, no source",
  definition: "a definition, or arithmetic",
};

const isPresent = (text: string | undefined): text is string => text !== undefined;

const named = ({ document, title, edition, clause }: Source): Content => [
  [document, title].filter(isPresent).join(", "),
  ...[edition, clause].filter(isPresent).flatMap((each) => [h("br"), each]),
];

/** A list of what rests on a source, under the name of its sort; nothing where there is none. */
const list = (what: string, ids: readonly string[], link?: (id: string) => string): Content =>
  ids.length === 0
    ? undefined
    : h("p", [
        `${what}: `,
        ...ids.flatMap((id, index) => [
          ...(index > 0 ? [", "] : []),
          link ? h("a", { href: link(id) }, h("code", id)) : h("code", id),
        ]),
      ]);

function rests(entry: RegisterEntry, rulePaths: ReadonlyMap<string, string>): Content {
  const ruleLink = (id: string): string => linkTo(PATH, rulePaths.get(id) ?? "rules/index.html");
  return [
    list("Rules", entry.rules, ruleLink),
    list("Formulas", entry.formulas, (id) => `formulas.html#${anchor("Formula", id)}`),
    list("Methods", entry.methods, (name) => `formulas.html#${anchor("Method", name)}`),
    list("Tables", entry.tables, (id) => `tables.html#${anchor("Table", id)}`),
    list("Connectors", entry.connectors),
    list("Sections", entry.sections),
  ];
}

export const SOURCES_COLUMNS = ["Document", "What it says", "How it is known", "What rests on it"];

/** Every source, with how well it is known and what rests on it. */
export function sourcesPage({ sources }: Register, rulePaths: ReadonlyMap<string, string>): SitePage {
  const rows = sources.map((entry) => ({
    id: anchor("Source", entry.id),
    cells: [named(entry.source), entry.source.says, BASIS[entry.source.basis], rests(entry, rulePaths)],
  }));
  const content: Content = [
    h("p", [
      "Everything an inspection rests on, listed from the program itself. Formulas with their worked examples are under ",
      h("a", { href: "formulas.html" }, "formulas"),
      ", figures under ",
      h("a", { href: "tables.html" }, "tables"),
      ". The words are ours; the document named decides.",
    ]),
    h("div", { class: "rows source-rows" }, table("Sources", SOURCES_COLUMNS, rows)),
  ];
  return { path: PATH, title: "Sources", number: "0.4", content };
}
