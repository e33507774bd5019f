import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { type Shown, showStarter } from "./browser.js";

// ISO 216 A4, 210 mm × 297 mm, and ANSI/ASME Y14.1 A (Letter), 8.5 in × 11 in. Margins as the style sets them:
// 12 mm at the sides, 14 mm above, 16 mm below. A CSS pixel is 1/96 in, a PDF point 1/72 in.
const MM = 96 / 25.4;
const PAPERS = [
  { name: "A4", wide: 210, high: 297 },
  { name: "Letter", wide: 215.9, high: 279.4 },
] as const;
const kinds = [
  "index.html",
  "builds/gala-wall.html",
  "builds/over-stage-banner.html",
  "rules/power.circuit-load.html",
  "rules/rigging.point-load.html",
  "house-standard.html",
  "parts.html",
  "stock.html",
  "sources.html",
  "formulas.html",
  "tables.html",
];

let shown: Shown;
beforeAll(async () => {
  shown = await showStarter();
});
afterAll(() => shown?.close());

const mediaBoxes = (pdf: Buffer): readonly (readonly number[])[] =>
  [...pdf.toString("latin1").matchAll(/\/MediaBox \[([^\]]*)\]/gu)].map(([, box = ""]) =>
    box.trim().split(/\s+/u).map(Number),
  );

const { deep, seed } = inject("effort");
/** To print a page takes the browser seconds: each is printed on one paper, the other the next time; deep, on both. */
const onPaper = (at: number): readonly string[] => kinds.filter((_, index) => deep || (index + at + seed) % 2 === 0);

describe.each(PAPERS.map((paper, at) => ({ ...paper, at })))("on $name", ({ name, wide, high, at }) => {
  const width = Math.floor((wide - 24) * MM);
  const height = (high - 30) * MM;

  it.each(notEmpty(onPaper(at)))("%s prints black on white with nothing cut", { timeout: 120_000 }, async (path) => {
    // Whoever reads in the dark prints on white paper all the same.
    const page = await shown.page({ viewport: { width, height: Math.floor(height) }, colorScheme: "dark" });
    await page.emulateMedia({ media: "print", colorScheme: "dark" });
    await page.goto(shown.fileUrl(path));
    const cut = await page.evaluate(`[...document.querySelectorAll("body *")].filter((each) => {
      const { width, right } = each.getBoundingClientRect();
      return width > 0 && right > ${width} + 1;
    }).map((each) => each.tagName + " " + each.textContent.slice(0, 40))`);
    expect(cut).toEqual([]);
    const look = await page.evaluate(
      `[getComputedStyle(document.body).color, getComputedStyle(document.body).backgroundColor]`,
    );
    expect(look).toEqual(["rgb(0, 0, 0)", "rgb(255, 255, 255)"]);
    const links = await page.evaluate(
      `[...document.querySelectorAll("main a")].map((each) => getComputedStyle(each, "::after").content).filter((each) => each !== "none" && each !== "normal")`,
    );
    expect(links, "where a link leads is not printed").toEqual([]);
    const tall = Number(await page.evaluate("document.documentElement.scrollHeight"));
    const pdf = await page.pdf({ format: name });
    const boxes = mediaBoxes(pdf);
    for (const [left, bottom, right, top] of notEmpty(boxes)) {
      // A printed point is rounded to whole CSS pixels by the browser.
      expect(Math.abs((right ?? 0) - (left ?? 0) - wide * (72 / 25.4))).toBeLessThan(1);
      expect(Math.abs((top ?? 0) - (bottom ?? 0) - high * (72 / 25.4))).toBeLessThan(1);
    }
    // As many pages as its length asks for; what is kept together leaves some of a page empty, at most as much again.
    const pages = (pdf.toString("latin1").match(/\/Type\s*\/Page\b/gu) ?? []).length;
    const least = Math.ceil(tall / height - 0.05);
    expect(pages).toBeGreaterThanOrEqual(least);
    expect(pages).toBeLessThanOrEqual(2 * least + 1);
    await page.close();
  });
});

describe("on paper", () => {
  it("a small face is seen from both sides at one height: who wires it from behind looks from one to the other", async () => {
    const page = await shown.page({ viewport: { width: 1600, height: 1000 } });
    await page.goto(shown.fileUrl("builds/riser-fascias.html"));
    // Less margins of 12 mm. Eight panels at their scale are too wide for two on A4, and no scale is bent for it.
    for (const { media, wide, faces } of [
      { media: "print", wide: 210 - 24, faces: ["high"] },
      { media: "print", wide: 215.9 - 24, faces: ["low", "high"] },
      { media: "screen", wide: 1600 / MM, faces: ["low", "high"] },
    ] as const) {
      await page.emulateMedia({ media });
      await page.setViewportSize({ width: Math.floor(wide * MM), height: 1000 });
      for (const face of notEmpty(faces))
        for (const what of ["power", "data"]) {
          const place = (side: string) => page.locator(`#Drawn-face-${face}-${what}-${side}`).boundingBox();
          const [front, rear] = [await place("audience"), await place("rear")];
          expect(rear?.y).toBe(front?.y);
          expect(rear?.x).toBeGreaterThan((front?.x ?? 0) + (front?.width ?? 0) - 1);
        }
    }
    await page.close();
  });

  it("the foot of every page of a sheet tells build, sheet, revision and day", async () => {
    const page = await shown.page();
    await page.goto(shown.serverUrl("builds/over-stage-banner.html"));
    // As the browser understands the style of our own: the box at the foot of a page (CSS Paged Media Level 3, 4.2).
    const rules = await page.evaluate(
      `[...document.styleSheets].flatMap((sheet) => [...sheet.cssRules].map((rule) => rule.cssText)).filter((text) => text.startsWith("@page"))`,
    );
    expect((rules as string[]).join(" ")).toMatch(
      /@bottom-left \{[^}]*over-stage-banner . sheet 1\.\d\d . revision \d+ . for-build . (?:[^}]*? . )?inspected 2\d{3}-\d\d-\d\d/u,
    );
    await page.close();
  });

  it("a sheet has its workings of what does not hold, its cautions and boxes to sign, and no menu", async () => {
    const page = await shown.page();
    await page.emulateMedia({ media: "print" });
    await page.goto(shown.fileUrl("builds/gala-wall.html"));
    expect(await page.locator("nav.menu").isVisible()).toBe(false);
    // What leads to a file says nothing on paper.
    expect(await page.locator(".download").first().isVisible()).toBe(false);
    expect(await page.locator("#Cautions").isVisible()).toBe(true);
    expect(await page.locator("details.working[open] li").first().isVisible()).toBe(true);
    expect(await page.locator("table.sign").isVisible()).toBe(true);
    await page.close();
  });
});
