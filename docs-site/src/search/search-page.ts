import MiniSearch from "minisearch";
import { searchScript } from "../generated/search-script.js";
import { h } from "../html/html.js";
import type { SitePage } from "../pages/page.js";
import type { SiteWithDocuments } from "../site/site.js";
import { searchEntries } from "./entries.js";
import { INDEX, type SearchEntry } from "./options.js";

/**
 * The scripts of the search: pages opened from a folder may not fetch a file, so the index comes as a script, too.
 * It is text in a text, since a text is read faster than the same as a program.
 */
export function searchFiles(site: SiteWithDocuments): ReadonlyMap<string, string> {
  const index = new MiniSearch<SearchEntry>(INDEX);
  index.addAll(searchEntries(site));
  return new Map([
    ["search-index.js", `globalThis.plumbmarkIndex = ${JSON.stringify(JSON.stringify(index))};\n`],
    ["search.js", searchScript],
  ]);
}

/** The page to search on. Its form appears only where scripts run. */
export const searchPage = (): SitePage => ({
  path: "search.html",
  title: "Search",
  number: "0.9",
  scripts: ["search-index.js", "search.js"],
  content: [
    h("form", { id: "Search", class: "search", role: "search", hidden: true }, [
      h("label", { for: "Words" }, "A rule, a build, a part, a lot or a key"),
      h("input", {
        id: "Words",
        type: "search",
        name: "q",
        autocomplete: "off",
        spellcheck: "false",
        ariaDescribedby: "Count",
      }),
      " ",
      h("button", { type: "submit" }, "Open the first"),
    ]),
    h("p", { id: "Count", role: "status" }),
    h("ol", { id: "Found", class: "found" }),
    h("noscript", [
      h("p", [
        "The search needs scripts; nothing else here does. Builds are listed in the ",
        h("a", { href: "index.html" }, "register"),
        ", rules in the ",
        h("a", { href: "rules/index.html" }, "index of rules"),
        " and parts in the ",
        h("a", { href: "parts.html" }, "catalogue"),
        ".",
      ]),
    ]),
  ],
});
