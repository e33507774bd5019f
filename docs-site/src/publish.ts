import { inspection, type RepositoryFiles, type Rule, schemas } from "@plumbmark/core";
import { published } from "./documents.js";
import { drawingStyle } from "./drawings/drawing-style.js";
import { pageHtml } from "./page.js";
import { searchFiles } from "./search/search-page.js";
import { sheetFiles } from "./sheet-sections.js";
import type { Site } from "./site.js";
import { sitePages } from "./site-pages.js";
import { rulePaths } from "./stated.js";
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

/** Inspects a repository and gathers what its pages are made from. @throws StandardError */
export function siteOf({ files, rules, today }: PublishInput): Site {
  const found = inspection(files, rules, { today, every: true });
  const stated = found.rules.map((rule) => ({ ...rule, own: !rules.includes(rule) }));
  return { inspection: found, today, documents: published(found), rules: stated, rulePaths: rulePaths(stated) };
}

/**
 * The static site as text by path; reads and writes nothing. The same input gives the same text.
 * @throws StandardError when the house standard cannot be used.
 */
export function publish(input: PublishInput): ReadonlyMap<string, string> {
  const site = siteOf(input);
  const frame = { standard: site.inspection.record.standard, today: site.today };
  const pages = new Map<string, string>();
  for (const page of sitePages(site)) pages.set(page.path, pageHtml(page, frame));
  for (const document of site.documents)
    for (const make of sheetFiles) for (const [path, text] of make(document, site)) pages.set(path, text);
  for (const [path, text] of searchFiles(site)) pages.set(path, text);
  pages.set("style.css", style + drawingStyle);
  for (const [name, schema] of schemaFiles)
    pages.set(`schema/${name}.schema.json`, `${JSON.stringify(schema, null, 2)}\n`);
  return pages;
}
