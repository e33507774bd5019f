import { rules } from "@plumbmark/rules";
import { HtmlValidate } from "html-validate";
import { describe, expect, inject, it } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { someOfEach } from "../run/some.js";
import { starterFiles, starterPages } from "./starter-files.js";

const pages = starterPages();
const html = [...pages].filter(([path]) => path.endsWith(".html"));
// The rules html-validate recommends follow the HTML standard and WCAG. How long a title is, no standard limits, and
// the author of the document chooses it.
const validator = new HtmlValidate({ extends: ["html-validate:recommended"], rules: { "long-title": "off" } });

/** All in a deep run; else one of each folder and of those beside them, others in each run. */
const { deep, seed } = inject("effort");
const folderOf = ([path]: readonly [path: string, text: string]): string => path.split("/").slice(0, -1).join("/");
const tried = deep ? html : someOfEach(html, folderOf, 1, seed);

describe("every page is sound HTML", () => {
  it("of builds, rules, guide and reference", () =>
    expect(tried.map(folderOf)).toEqual(expect.arrayContaining(["", "builds", "rules", "guide", "reference"])));

  it.each(notEmpty(tried))("%s", async (path, text) => {
    const report = await validator.validateString(text, path);
    expect(
      report.results.flatMap(({ messages }) =>
        messages.map(({ ruleId, message, line }) => `${line} ${ruleId}: ${message}`),
      ),
    ).toEqual([]);
  });
});

describe("the site has", () => {
  it("a page for every build and every rule, and the schemas", () => {
    for (const { path } of notEmpty(starterFiles.documents))
      expect([...pages.keys()]).toContain(path.replace(/\.md$/u, ".html"));
    for (const { id } of notEmpty(rules)) expect([...pages.keys()]).toContain(`rules/${id}.html`);
    for (const name of ["build", "parts", "stock", "house-standard", "survey", "wish", "record", "draft"])
      expect(JSON.parse(pages.get(`schema/${name}.schema.json`) ?? "")).toHaveProperty("$schema");
  });

  it("no script but the search and nothing from elsewhere", () => {
    for (const [path, text] of notEmpty(html)) {
      expect(text).not.toMatch(/<iframe|<object|<embed|<img/iu);
      // Only the search runs a script, and one of the site's own.
      const scripts = text.match(/<script[^>]*>/giu) ?? [];
      expect(scripts).toEqual(
        path === "search.html" ? ['<script src="search-index.js" defer>', '<script src="search.js" defer>'] : [],
      );
      expect(text).not.toMatch(/<link[^>]+href="(?:https?:)?\/\//iu);
    }
    expect(pages.get("style.css")).not.toMatch(/url\(|@import/u);
  });

  it("the cautions on every sheet of the starter: each lifts or uses mains", () => {
    for (const [path, text] of notEmpty(html)) if (path.startsWith("builds/")) expect(text).toContain('id="Cautions"');
  });
});
