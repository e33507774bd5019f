import { rules } from "@plumbmark/rules";
import { describe, expect, inject, it } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { some } from "../run/some.js";
import { readCsv } from "../takeoff/csv-reader.js";
import { read, words } from "./drawings/read.js";
import { sheetsOf } from "./page-of.js";
import { starterFiles, TODAY } from "./starter-files.js";

// What must not be built from says so wherever its figures stand: on a loose page, in a drawing or a list of its own.

const REFUSED = "NOT READY. Do not lift. Do not energise.";
const DRAFT = "DRAFT. Do not build from it.";

const gala = starterFiles.documents.find(({ path }) => path.endsWith("gala-wall.md"));
const draft = { path: "builds/sketch.md", text: "---\nbuild: sketch\ntitle: Sketch\nstatus: draft\n---\n\n# Sketch\n" };
/** Of those that are ready all in a deep run; else one, another in each run. */
const { deep, seed } = inject("effort");
const ready = starterFiles.documents.filter(({ path }) => !/gala-wall|gallery-header/u.test(path));
const tried = deep ? ready : some(ready, 1, seed);
const files = { ...starterFiles, documents: [...starterFiles.documents, draft] };
const pages = sheetsOf({ files, rules, today: TODAY }, [...(gala ? [gala] : []), draft, ...tried]);
const own = (build: string, ending: string): readonly (readonly [string, string])[] =>
  [...pages].filter(([path]) => path.includes(`/${build}/`) && path.endsWith(ending));

describe("a document that is not ready", () => {
  it("is there to be looked at", () => expect(gala).toBeDefined());

  it("says so at the head of its sheet, in words", () =>
    expect(pages.get("builds/gala-wall.html")).toMatch(
      new RegExp(`<div class="body"><p class="notice">${REFUSED}</p>`, "u"),
    ));

  it("says so in the foot of every printed page", () =>
    expect(pages.get("builds/gala-wall/sheet.css")).toContain(`@bottom-left { content: "${REFUSED}"`));

  it.each(notEmpty(own("gala-wall", ".svg")))("says so in the strip of %s and in its spoken description", (_, text) => {
    const drawing = read(text);
    expect(drawing.all("text").map(words).join(" ")).toContain(REFUSED);
    expect(drawing.all("desc").map(words).join(" ").startsWith(REFUSED)).toBe(true);
  });

  it.each(notEmpty(own("gala-wall", ".csv")))("says so in every line of %s", (_, text) => {
    const [heads, ...rows] = readCsv(text);
    const column = heads?.indexOf("Verdict") ?? -1;
    expect(column).toBe((heads?.length ?? 0) - 1);
    expect(new Set(rows.map((row) => row[column]))).toEqual(new Set([REFUSED]));
  });

  it("says beside a circuit that it is over its rating", () => {
    const [heads = [], ...rows] = readCsv(pages.get("builds/gala-wall/circuits.csv") ?? "");
    const row = rows.find(([name]) => name === "wall-1") ?? [];
    expect(row[heads.indexOf("Does not hold")]).toContain("power.circuit-load fails");
  });
});

describe("a draft", () => {
  it("says as loudly that nothing is built from it", () =>
    expect(pages.get("builds/sketch.html")).toMatch(/<p class="notice">[^<]*DRAFT\. Do not build from it\.<\/p>/u));

  it("says so in the foot of every printed page", () =>
    expect(pages.get("builds/sketch/sheet.css")).toMatch(new RegExp(`@bottom-left \\{ content: "[^"]*${DRAFT}"`, "u")));
});

describe("a document that is ready", () => {
  it.each(notEmpty(tried.map(({ path }) => path)))("%s has no such words", (file) => {
    const page = pages.get(file.replace(/\.md$/u, ".html")) ?? "";
    expect(page).toContain('class="title"');
    expect(page).not.toContain('class="notice"');
  });
});
