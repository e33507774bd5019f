import { type PublishInput, siteFiles } from "@plumbmark/docs-site";

/**
 * A file of a site by its path, or the first whose path is of that form; undefined when there is none. Nothing that comes
 * after it is made: of the sheet of one document that spares the guide, the reference and the search.
 */
export function pageOf(input: PublishInput, wanted: string | RegExp): string | undefined {
  for (const [path, content] of siteFiles(input))
    if (typeof wanted === "string" ? path === wanted : wanted.test(path)) return String(content);
  return undefined;
}
