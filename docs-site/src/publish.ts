import { inspect, type RepositoryFiles, type Rule, readHouseStandard, schemas } from "@plumbmark/core";
import { type Published, published } from "./documents.js";
import { linkTo, pageHtml } from "./page.js";
import { register } from "./register.js";
import { houseRules, rulePage, rulePaths, rulesIndex } from "./rule-pages.js";
import { sheet } from "./sheet.js";
import { style } from "./style.js";

export interface PublishInput {
  readonly files: RepositoryFiles;
  readonly rules: readonly Rule[];
  /** The day of the inspection, `2027-03-05`. */
  readonly today: string;
}

const schemaFiles: readonly (readonly [string, unknown])[] = [
  ["build", schemas.buildSchema],
  ["parts", schemas.partsSchema],
  ["stock", schemas.stockSchema],
  ["house-standard", schemas.houseStandardSchema],
  ["record", schemas.recordSchema],
];

/** From a link in one document to the page of the other document it names. */
const resolver =
  (documents: readonly Published[], { entry, page }: Published) =>
  (href: string) => {
    try {
      const base = new URL(entry.file.split("/").map(encodeURIComponent).join("/"), "file:///");
      const { pathname, hash, protocol } = new URL(href, base);
      const target = documents.find(({ entry: { file } }) => `/${file}` === decodeURIComponent(pathname));
      return protocol === "file:" && target ? linkTo(page, target.page) + hash : undefined;
    } catch {
      // Neither an address nor a path: it leads nowhere.
      return undefined;
    }
  };

/**
 * The static site as text by path; reads and writes nothing.
 * @throws StandardError when the house standard cannot be used.
 */
export function publish({ files, rules, today }: PublishInput): ReadonlyMap<string, string> {
  const record = inspect(files, rules, { today, every: true });
  const { standard } = readHouseStandard(files.houseStandard);
  const documents = published(files, record.documents, standard.practice);
  const stated = [...rules, ...houseRules(standard)];
  const paths = rulePaths(stated);
  const link = (from: string) => (id: string) => (paths.has(id) ? linkTo(from, paths.get(id) ?? "") : undefined);
  const pages = [
    register(documents, record),
    ...documents.map((each) => sheet(each, link(each.page), resolver(documents, each))),
    rulesIndex(stated, paths),
    ...stated.map((rule) => rulePage(rule, paths.get(rule.id) ?? "", standard.rules[rule.id])),
  ];
  return new Map([
    ...pages.map((page) => [page.path, pageHtml(page, { standard: record.standard, today })] as const),
    ["style.css", style],
    ...schemaFiles.map(
      ([name, schema]) => [`schema/${name}.schema.json`, `${JSON.stringify(schema, null, 2)}\n`] as const,
    ),
  ]);
}
