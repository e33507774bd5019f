import type { Data, Part } from "@plumbmark/core";
import type { Published } from "./documents.js";
import { type Content, h } from "./html.js";
import type { Page } from "./page.js";
import type { Site } from "./site.js";
import { table } from "./table.js";

/** The parts of the catalogue by kind and name. */
export const partsOf = ({ inspection }: Site): readonly Part[] =>
  [...inspection.catalogue.parts.values()].sort((one, other) =>
    one.kind === other.kind ? (one.name < other.name ? -1 : 1) : one.kind < other.kind ? -1 : 1,
  );

/** The id of a part's row: an author's name with everything but letters, digits and dashes as its code. */
export const partAnchor = (name: string): string =>
  `Part-${name.replace(/[^A-Za-z0-9-]/gu, (letter) => `_${letter.codePointAt(0)?.toString(16)}_`)}`;

/** Every text that stands anywhere in some data, keys too. */
function textsIn(data: Data | undefined, into: Set<string>): Set<string> {
  if (typeof data === "string") into.add(data);
  else if (Array.isArray(data)) for (const each of data as readonly Data[]) textsIn(each, into);
  else if (data !== null && typeof data === "object")
    for (const [key, value] of Object.entries(data as Record<string, Data>)) textsIn(value, into.add(key));
  return into;
}

function usersOf({ documents }: Site): ReadonlyMap<string, readonly Published[]> {
  const users = new Map<string, Published[]>();
  for (const document of documents)
    for (const text of textsIn(document.build?.reader.data(""), new Set())) {
      const known = users.get(text);
      if (known) known.push(document);
      else users.set(text, [document]);
    }
  return users;
}

const links = (documents: readonly Published[]): Content =>
  documents.flatMap(({ page, number, title }, index) => [index > 0 ? ", " : "", h("a", { href: page, title }, number)]);

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

/** Every part of the catalogue, what is written of it, and the sheets it is on. */
export function partsPage(site: Site): Page {
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
      table("Parts", ["Part", "Kind", "What is written of it", "File", "On sheets"], rows),
    ],
  };
}
