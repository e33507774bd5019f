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
  /** Bytes of a picture of the repository by its path from the root; without it no picture is shown. */
  readonly picture?: (path: string) => Uint8Array | undefined;
}

const schemaFiles: readonly (readonly [string, unknown])[] = [
  ["build", schemas.buildSchema],
  ["parts", schemas.partsSchema],
  ["stock", schemas.stockSchema],
  ["house-standard", schemas.houseStandardSchema],
  ["record", schemas.recordSchema],
];

/** Inspects a repository and gathers what its pages are made from. @throws StandardError */
export function siteOf({ files, rules, today, picture }: PublishInput): Site {
  const found = inspection(files, rules, { today, every: true });
  const stated = found.rules.map((rule) => ({ ...rule, own: !rules.includes(rule) }));
  return {
    inspection: found,
    today,
    documents: published(found),
    rules: stated,
    rulePaths: rulePaths(stated),
    ...(picture ? { picture } : {}),
    pictures: new Map(),
  };
}

/** A file of the site: its path, and what stands in it. */
export type SiteFile = readonly [path: string, content: string | Uint8Array];

/**
 * The files of the static site, one after another, so that each can be written before the next is made.
 * Nothing is read or written here, and the same input gives the same files.
 * @throws StandardError when the house standard cannot be used.
 */
export function* siteFiles(input: PublishInput): Generator<SiteFile> {
  const site = siteOf(input);
  const frame = { standard: site.inspection.record.standard, today: site.today };
  for (const page of sitePages(site)) yield [page.path, pageHtml(page, frame)];
  for (const document of site.documents) for (const make of sheetFiles) yield* make(document, site);
  yield* site.pictures;
  yield* searchFiles(site);
  yield ["style.css", style + drawingStyle];
  for (const [name, schema] of schemaFiles)
    yield [`schema/${name}.schema.json`, `${JSON.stringify(schema, null, 2)}\n`];
}

/** The whole site at once, for those who look at it rather than write it. @throws StandardError */
export const publish = (input: PublishInput): ReadonlyMap<string, string> =>
  new Map([...siteFiles(input)].filter((file): file is [string, string] => typeof file[1] === "string"));
