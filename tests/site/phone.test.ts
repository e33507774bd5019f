import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { some } from "../run/some.js";
import { axeOf } from "./axe.js";
import { type Shown, showStarter } from "./browser.js";
import { inSchemes } from "./schemes.js";

// WCAG 2.2, 1.4.10: a table may scroll sideways, but whoever stands on a ladder with a phone has one hand to read it.
const sheets = ["builds/over-stage-banner.html", "builds/gala-wall.html", "builds/riser-fascias.html"];
const { deep, seed } = inject("effort");
/** A sheet takes as long as all else: an ordinary run looks at one, another each time. */
const paths = [
  ...(deep ? sheets : some(sheets, 1, seed)),
  "index.html",
  "stock.html",
  "parts.html",
  "sources.html",
  "formulas.html",
];
const WIDTHS = [320, 360] as const;

let shown: Shown;
let page: Page;
beforeAll(async () => {
  shown = await showStarter();
  page = await shown.page();
});
afterAll(() => shown?.close());

const open = async (path: string, width: number): Promise<void> => {
  await page.setViewportSize({ width, height: 740 });
  await page.goto(shown.fileUrl(path));
};

/** Cells that reach past the box of their table. */
const CUT = `[...document.querySelectorAll(".rows")].flatMap((each) => {
  const box = each.getBoundingClientRect();
  return [...each.querySelectorAll("tbody :is(th, td)")]
    .filter((cell) => cell.getBoundingClientRect().right > box.right + 1)
    .map((cell) => cell.textContent);
})`;

/** For every cell that says something: the head of its column, and the words before it. */
const LABELS = `[...document.querySelectorAll(".rows table")].flatMap((table) => {
  const heads = [...table.tHead.rows[0].cells].map((each) => each.textContent);
  return [...table.tBodies[0].rows].flatMap((row) =>
    [...row.cells].slice(1).filter((cell) => cell.textContent !== "").map((cell) =>
      [heads[cell.cellIndex], JSON.parse(getComputedStyle(cell, "::before").content).trim()]));
})`;

describe.each(paths)("on a phone the rows of %s", (path) => {
  it.each(WIDTHS)("stand whole at %i pixels", async (width) => {
    await open(path, width);
    expect(await page.evaluate(CUT)).toEqual([]);
    const scrolls = await page.evaluate(
      `[...document.querySelectorAll(".rows .wide")].filter((each) => each.scrollWidth > each.clientWidth).length`,
    );
    expect(scrolls).toBe(0);
  });

  it("say before each figure of what column it is", async () => {
    await open(path, 360);
    const found = (await page.evaluate(LABELS)) as readonly (readonly [string, string])[];
    expect(found.length).toBeGreaterThan(20);
    expect(found.filter(([head, label]) => head !== label)).toEqual([]);
  });

  it("are tables all the same to whoever hears them", async () => {
    await open(path, 360);
    // What is folded away is told to nobody until it is opened.
    await page.evaluate(`document.querySelectorAll("details").forEach((each) => { each.open = true; })`);
    const devices = await page.context().newCDPSession(page);
    const { nodes } = await devices.send("Accessibility.getFullAXTree");
    const count = (role: string): number => nodes.filter((each) => each.role?.value === role).length;
    const there = async (selector: string): Promise<number> => page.locator(selector).count();
    expect(count("rowheader")).toBe(await there(`th[scope="row"]`));
    expect(count("columnheader")).toBe(await there(`th[scope="col"]`));
    await devices.detach();
  });

  it("are tables with lines on a wide screen and on paper", async () => {
    await open(path, 1280);
    const look = () => page.evaluate(`getComputedStyle(document.querySelector(".rows tr")).display`);
    expect(await look()).toBe("table-row");
    await page.setViewportSize({ width: 360, height: 740 });
    await page.emulateMedia({ media: "print" });
    expect(await look()).toBe("table-row");
    await page.emulateMedia({ media: "screen" });
  });
});

describe("on a phone", () => {
  it.each(notEmpty(inSchemes(paths)))(
    "axe finds nothing on %s, in %s",
    { timeout: 120_000 },
    async (path, colorScheme) => {
      await open(path, 360);
      const { passes, violations } = await axeOf(page, colorScheme);
      expect(passes).toBeGreaterThan(colorScheme === "light" ? 10 : 0);
      expect(violations).toEqual([]);
    },
  );
});

// The letters of a margin bar are drawn 11 pixels high at its full width of 300, and shrink with it.
it("the words beside a margin bar are no smaller than 9 pixels on a phone", async () => {
  await open("builds/gala-wall.html", 360);
  const widths = (await page.evaluate(
    `[...document.querySelectorAll("#Open ~ ul .margin-bar")].map((each) => each.getBoundingClientRect().width)`,
  )) as readonly number[];
  expect(widths.length).toBeGreaterThan(1);
  for (const width of widths) expect((width / 300) * 11).toBeGreaterThanOrEqual(9);
});
