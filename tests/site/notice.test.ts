import { openRepository } from "@plumbmark/core";
import { publish } from "@plumbmark/docs-site";
import { rules } from "@plumbmark/rules";
import { describe, expect, it } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { readCsv } from "../takeoff/csv-reader.js";
import { read, words } from "./drawings/read.js";
import { starterFiles, TODAY } from "./starter-files.js";

// What must not be built from says so wherever its figures stand: on a loose page, in a drawing or a list of its own.

const REFUSED = "NOT READY. Do not lift. Do not energise.";
const DRAFT = "DRAFT. Do not build from it.";

const gala = starterFiles.documents.find(({ path }) => path.endsWith("gala-wall.md"));
const draft = { path: "builds/sketch.md", text: "---\nbuild: sketch\ntitle: Sketch\nstatus: draft\n---\n\n# Sketch\n" };
const files = { ...starterFiles, documents: [...starterFiles.documents, draft] };
const pages = publish({ files, rules, today: TODAY });
const { documents } = openRepository(files, rules, { today: TODAY }).all();
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
  const ready = documents.filter(({ verdict }) => verdict === "ready");
  it.each(notEmpty(ready.map(({ file }) => file)))("%s has no such words", (file) => {
    const page = pages.get(file.replace(/\.md$/u, ".html")) ?? "";
    expect(page).toContain('class="title"');
    expect(page).not.toContain('class="notice"');
  });
});
