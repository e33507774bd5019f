import { rules } from "@plumbmark/rules";
import { describe, expect, it } from "vitest";
import { readCsv } from "../takeoff/csv-reader.js";
import { pageOf } from "./page-of.js";
import { starterFiles, starterPages, TODAY } from "./starter-files.js";

const pages = starterPages();
const sheet = pages.get("builds/over-stage-banner.html") ?? "";

/** The tables of a page by their caption: number of body rows of each. */
const rowsOf = (html: string, caption: string): readonly number[] =>
  [...html.matchAll(/<caption>([^<]*)<\/caption>[\s\S]*?<tbody>([\s\S]*?)<\/tbody>/gu)]
    .filter(([, title]) => title === caption)
    .map(([, , body]) => body?.split("<tr>").length ?? 0)
    .map((pieces) => pieces - 1);

/** A page of one document whose body is given. */
const published = (body: string): string => {
  const text = `---\nbuild: slip\ntitle: Slip\nstatus: draft\n---\n\n# Slip\n\n${body}\n`;
  const input = { files: { ...starterFiles, documents: [{ path: "a.md", text }] }, rules, today: TODAY };
  const html = pageOf(input, "builds/slip.html") ?? "";
  return html.slice(html.indexOf('class="prose"'));
};

describe("schedules on a sheet", () => {
  // Counted by hand from the document, as in tests/takeoff.
  it.each([
    ["Parts", 33],
    ["Cables", 16],
    ["Panels", 6],
    ["Circuits", 3],
    ["Hangs", 4],
  ])("%s has %i rows", (title, rows) => expect(rowsOf(sheet, title)).toEqual([rows]));

  it.each(["parts", "cables", "panels", "circuits", "hangs"])("%s has a file that reads as CSV", (name) => {
    expect(sheet.includes(`over-stage-banner/${name}.csv"`)).toBe(true);
    const records = readCsv(pages.get(`builds/over-stage-banner/${name}.csv`) ?? "");
    expect(records.length).toBeGreaterThan(1);
    expect(new Set(records.map((record) => record.length)).size).toBe(1);
  });

  it.each(["parts", "cables", "panels", "circuits", "hangs"])("%s says what its words mean", (name) => {
    const [, own = ""] = sheet.split(`id="Schedule-${name}"`);
    expect(own.slice(0, own.indexOf('class="download"'))).toContain('class="said"');
  });

  it("leaves out a schedule with nothing in it, and its file", () => {
    expect(pages.get("builds/riser-fascias.html")).not.toContain("Schedule-hangs");
    expect(pages.has("builds/riser-fascias/hangs.csv")).toBe(false);
  });
});

describe("a link to a schedule in the prose", () => {
  it("is replaced by the table when it stands alone", () => {
    expect(rowsOf(sheet, "Every cable, with its label and where its ends go")).toEqual([16]);
    expect(sheet).not.toContain("calc:");
  });

  it("keeps its words where there is no such schedule", () => {
    const html = published("[All cables](calc:schedules.cabels)");
    expect(html).toContain("<p>All cables</p>");
    expect(html).not.toContain("data-figure");
  });

  it("keeps its words inside a sentence", () =>
    expect(published("See [all cables](calc:schedules.cables) below.")).toMatch(/See <span>all cables<\/span> below/u));

  it.each(['<div data-figure="cables">x</div>', '<div data-figure="parts" onclick="x()">x</div>'])(
    "cannot be made by raw HTML: %s",
    (body) => expect(published(body)).not.toMatch(/data-figure|onclick|<caption>/u),
  );

  it("shows its words as words", () =>
    expect(published("[a <b onclick=x> & c](calc:schedules.cabels)")).not.toMatch(/<b onclick/u));
});
