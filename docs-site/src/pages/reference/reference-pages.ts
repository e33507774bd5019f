import { type Content, h } from "../../html/html.js";
import { inlineCode } from "../../html/inline-code.js";
import type { Site } from "../../site/site.js";
import type { SitePage } from "../page.js";
import { knownFiles } from "./known-files.js";
import { listsPage } from "./lists-page.js";
import { referencePage } from "./reference-page.js";

export const REFERENCE = "reference/index.html";

const numbered = (index: number): string => `4.${String(index).padStart(2, "0")}`;

const HOW = [
  "`NAME` stands for a name of your own, and `ITEM` for an item of a list. Keys stand in any order.",
  "What is left out is missing, and never nought. A check that reads it is open, unless the table says what counts when it is left out.",
  "A guess has a `?` behind it: `12 A ?`. A bound has `at most` or `at least` before it: `at most 60 m`. Both are allowed only where the table says so.",
  "A value outside of what is plausible is told; it may be a slip of the pen.",
  "The checks are those that read the key while they judged the documents they are tested with. A check may read a key and come out the same.",
];

/** Every key of every file people write, made from the schemas, and the names that may stand in them. */
export function referencePages(site: Site): readonly SitePage[] {
  const pages = knownFiles.map((file, index) => referencePage(file, numbered(index + 1), site));
  const lists = listsPage(numbered(knownFiles.length + 1));
  const content: Content = [
    h("p", "Every key that may be written, made from the schemas the files are checked with."),
    h(
      "ul",
      [...pages, lists].map(({ path, title }) => h("li", h("a", { href: path.replace("reference/", "") }, title))),
    ),
    h("h2", "How the tables are read"),
    h(
      "ul",
      HOW.map((each) => h("li", inlineCode(each))),
    ),
    h("h2", "Schemas"),
    h("p", "JSON Schemas, draft 2020-12, for editors and other programs. Each stands on its own."),
    h(
      "ul",
      [...knownFiles.map(({ name }) => name), "record", "draft"].map((name) =>
        h("li", h("a", { href: `../schema/${name}.schema.json` }, `${name}.schema.json`)),
      ),
    ),
  ];
  return [{ path: REFERENCE, title: "Reference", number: numbered(0), content }, ...pages, lists];
}
