import { publish } from "@plumbmark/docs-site";
import { rules } from "@plumbmark/rules";
import { describe, expect, inject, it } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { ownPagesOf, pageOf } from "./page-of.js";
import { TODAY } from "./starter-files.js";

// Attacks of the kinds listed in the OWASP sheet on cross-site scripting prevention, from memory.
const BODY = `
# <script>alert(1)</script>

<script>alert(2)</script>

<img src=x onerror=alert(3)> and <a href="javascript:alert(4)" onclick="alert(5)">this</a>

[one](javascript:alert%286%29) [two](JaVaScRiPt:alert) [three](data:text/html,x) [four](vbscript:x) [five](<java&#10;script:alert>)

![picture](javascript:alert) <svg onload=alert(7)></svg> <style>body{display:none}</style>

<iframe src="https://evil.example"></iframe>

[six](../../../../etc/passwd) [seven](//evil.example/x) [eight][ref]

[ref]: javascript:alert(8)

| <b onmouseover=alert(9)>a</b> | b |
|---|---|
| [c](javascript:x) | \`<script>\` |
`;

const document = (path: string, build: string, title: string, body = BODY) => ({
  path,
  text: `---\nbuild: ${JSON.stringify(build)}\ntitle: ${JSON.stringify(title)}\nstatus: draft\n---\n${body}`,
});

const input = (documents: readonly { path: string; text: string }[]) => ({
  files: { parts: [], documents },
  rules,
  today: TODAY,
});
/** In a deep run with the pages that nothing of an author stands on. */
const publishAll = (documents: readonly { path: string; text: string }[]) =>
  inject("effort").deep ? publish(input(documents)) : ownPagesOf(input(documents));

const tags = (text: string): readonly string[] => text.match(/<[a-z][^>]*>/giu) ?? [];

describe("what a hostile author writes", () => {
  const title = '"><script>alert(0)</script>';
  const pages = publishAll([document("builds/x.md", "x", title)]);

  it("is shown as words and never run", () => {
    for (const [path, text] of pages) {
      // The search page has a form and scripts of its own and shows nothing of an author's before it is asked.
      if (!path.endsWith(".html") || path === "search.html") continue;
      const bad = [
        /^<(?:script(?! src="search)|style|iframe|svg(?![^>]* role="img")|img|object|embed|form|input|base)/iu,
        /\son[a-z]+\s*=/iu,
        /(?:href|src)\s*=\s*["']?\s*(?:javascript|data|vbscript|\/\/)/iu,
      ];
      const all = notEmpty(tags(text));
      expect(all.filter((tag) => bad.some((each) => each.test(tag)))).toEqual([]);
    }
    expect(pages.get("index.html")).toContain("&#x3C;script>alert(0)");
  });

  it("keeps the words of links that are taken away", () => {
    const page = pages.get("builds/x.html") ?? "";
    for (const word of ["one", "two", "three", "four", "six", "seven", "eight"])
      expect(page).toContain(`<span>${word}</span>`);
  });
});

describe("names of builds", () => {
  it("never lead outside the site and never write over each other", () => {
    const names = ["../../x", "a/b", "same", "same", "Same", "..", "", "/etc/passwd", "index.html"];
    const pages = publishAll(
      names.map((name, number) => document(`builds/d${number}.md`, name, `Document ${number}`, "\nText\n")),
    );
    const own = [...pages.keys()].filter((path) => path.startsWith("builds/"));
    const sheets = own.filter((path) => path.endsWith(".html"));
    expect(own.filter((path) => !sheets.includes(path.replace(/\/sheet\.css$/u, ".html")))).toEqual([]);
    expect(sheets).toHaveLength(names.length);
    expect(new Set(sheets.map((path) => path.toLowerCase())).size).toBe(names.length);
    for (const path of sheets) expect(path).toMatch(/^builds\/[a-z0-9][a-z0-9.-]*\.html$/u);
  });
});

describe("a document that cannot be read", () => {
  it("has a sheet, is not ready and keeps its cautions", () => {
    const page =
      pageOf(input([{ path: "builds/x.md", text: "---\nbuild: [x\n---\n\nText\n" }]), "builds/builds-x.html") ?? "";
    expect(page).toContain("Not ready");
    expect(page).toContain('id="Cautions"');
  });
});
