import { type PublishInput, sheetOfDocument, siteFiles, siteOf, withOutline } from "@plumbmark/docs-site";

/**
 * A file of a site by its path, or the first whose path is of that form; undefined when there is none. Nothing that comes
 * after it is made: of the sheet of one document that spares the guide, the reference and the search.
 */
export function pageOf(input: PublishInput, wanted: string | RegExp): string | undefined {
  for (const [path, content] of siteFiles(input))
    if (typeof wanted === "string" ? path === wanted : wanted.test(path)) return String(content);
  return undefined;
}

/** The first of the pages that are the product's own: sources, formulas, guide, reference and one of each rule. */
const FIRST_OF_PRODUCT = "sources.html";

/**
 * The files of a site that are made of what its authors wrote, by their paths: sheets, lists, venues and wishes. What is
 * the product's own, and the index of the search, are not made: they take longer than all of these.
 */
export function ownPagesOf(input: PublishInput): ReadonlyMap<string, string> {
  const pages = new Map<string, string>();
  for (const [path, content] of siteFiles(input)) {
    if (path === FIRST_OF_PRODUCT) return pages;
    if (typeof content === "string") pages.set(path, content);
  }
  throw new Error(`the site has no ${FIRST_OF_PRODUCT}`);
}

/** The files of the sheets of some documents alone, by their paths, as the whole site has them. */
export function sheetsOf(
  input: PublishInput,
  documents: PublishInput["files"]["documents"],
): ReadonlyMap<string, string> {
  const site = siteOf({ ...input, files: { ...input.files, documents: input.files.documents.map(withOutline) } });
  const files = documents.flatMap((document) => [...sheetOfDocument(withOutline(document), site).files]);
  return new Map(files.filter((file): file is [string, string] => typeof file[1] === "string"));
}
