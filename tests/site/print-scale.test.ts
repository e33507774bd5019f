import { rules } from "@plumbmark/rules";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { some } from "../run/some.js";
import { type Shown, show } from "./browser.js";
import { starterFiles, TODAY } from "./starter-files.js";

// What a browser puts on paper is measured in millimetres: a CSS pixel is 1/96 in (CSS Values 4, 6.2), ISO 216 A4 is
// 210 mm × 297 mm, Letter 8.5 in × 11 in, and the style leaves 12 mm at the sides, 14 mm above and 16 mm below. Technical
// lettering is 2.5 mm at least (ISO 3098-1, the least nominal size in use on A4).
const MM = 96 / 25.4;
const LEAST_LETTERING = 2.5;
const PAPERS = [
  { name: "A4", wide: 210 - 24, high: 297 - 30 },
  { name: "Letter", wide: 215.9 - 24, high: 279.4 - 30 },
] as const;

/** A face far wider than it is high, whose height has no room along its own side. */
const LONG = `---
build: long
title: Long
status: draft
practice: iec
faces:
  banner: {panel: tile-w, columns: 20, rows: 1, support: wall}
---

# Long
`;
const PARTS = "tile-w: {kind: panel, size: 500 mm x 500 mm, pixels: 120 x 120, mass: 8 kg, power: {maximum: 100 W}}\n";

const { deep, seed } = inject("effort");
const BANNER = "builds/over-stage-banner.md";
/** An ordinary run measures the banner, which has most of all, and three other sheets; a deep run all. */
const isOther = ({ path }: { readonly path: string }): boolean => path !== BANNER;
const others = starterFiles.documents.filter(isOther);
const measured = [
  ...starterFiles.documents.filter((each) => !isOther(each)),
  ...(deep ? others : some(others, 3, seed)),
];

let shown: Shown;
beforeAll(async () => {
  const files = {
    ...starterFiles,
    wishes: [], // What is drawn of a wish is drawn as a build is, and to draft takes as long as all else here.
    parts: [...starterFiles.parts, { path: "parts/more.yaml", text: PARTS }],
    documents: [...measured, { path: "builds/long.md", text: LONG }],
  };
  shown = await show({ files, rules, today: TODAY });
});
afterAll(() => shown?.close());

interface Measured {
  readonly title: string;
  readonly ratio: number | null;
  readonly smaller: boolean;
  readonly width: number;
  readonly height: number;
  readonly lettering: number;
  readonly bars: readonly { readonly length: number; readonly drawn: number }[];
  readonly lines: readonly { readonly metres: number; readonly drawn: number }[];
  readonly outside: readonly string[];
}

/** Every drawing of a page as it is laid out for paper, in CSS pixels. */
const MEASURE = `[...document.querySelectorAll("svg.drawing")].map((svg) => {
  const all = (of) => [...svg.querySelectorAll(of)];
  const box = svg.getBoundingClientRect();
  const perUnit = box.width / svg.viewBox.baseVal.width;
  const text = all("text").map((each) => each.textContent).join(" ");
  const said = /Scale 1:(\\d+)/.exec(text);
  const size = (each) => Number(getComputedStyle(each).fontSize.replace("px", "")) * Math.min(perUnit, box.height / svg.viewBox.baseVal.height);
  return {
    title: svg.querySelector("title").textContent,
    ratio: said && Number(said[1]),
    smaller: text.includes("printed smaller"),
    width: box.width,
    height: box.height,
    lettering: Math.min(...all("text").map(size)),
    bars: all(".scale-bar").map((each) => ({ length: Number(each.dataset.length), drawn: each.querySelector("rect").getBoundingClientRect().width })),
    lines: all(".dimension:not(.broken)[data-metres]").map((each) => {
      const { width, height } = each.querySelector(".dimension-line").getBoundingClientRect();
      return { metres: Number(each.dataset.metres), drawn: Math.max(width, height) };
    }),
    outside: all("text").filter((each) => {
      const own = each.getBoundingClientRect();
      return own.width > 0 && (own.left < box.left - 1 || own.right > box.right + 1 || own.bottom > box.bottom + 1);
    }).map((each) => each.textContent),
  };
})`;

describe.each(PAPERS)("on $name", ({ name, wide, high }) => {
  const sheets = [...measured.map(({ path }) => path.replace(/\.md$/u, ".html")), "builds/long.html"];

  it.each(notEmpty(sheets))("drawings of %s are as large as they say", { timeout: 120_000 }, async (path) => {
    const page = await shown.page({ viewport: { width: Math.floor(wide * MM), height: Math.floor(high * MM) } });
    await page.emulateMedia({ media: "print" });
    await page.goto(shown.fileUrl(path));
    const drawings = (await page.evaluate(MEASURE)) as readonly Measured[];
    for (const drawing of notEmpty(drawings)) {
      const about = `${drawing.title} on ${name}`;
      expect(drawing.width / MM, about).toBeLessThanOrEqual(wide + 0.3);
      expect(drawing.height / MM, about).toBeLessThanOrEqual(high + 0.3);
      expect(drawing.outside, about).toEqual([]);
      // One that is higher than a page states that it is printed smaller.
      if (drawing.smaller) continue;
      expect(drawing.lettering / MM, about).toBeGreaterThanOrEqual(LEAST_LETTERING);
      if (drawing.ratio === null) continue;
      // A third of a millimetre: lines are laid out on whole pixels.
      for (const { length, drawn } of notEmpty(drawing.bars))
        expect(Math.abs(drawn / MM - (length * 1000) / drawing.ratio), `bar of ${about}`).toBeLessThan(0.35);
      for (const { metres, drawn } of drawing.lines.filter(
        (each) => (each.metres * 1000) / (drawing.ratio as number) >= 5,
      ))
        expect(Math.abs(drawn / MM - (metres * 1000) / drawing.ratio), `${metres} m of ${about}`).toBeLessThan(0.35);
    }
    await page.close();
  });

  it("some drawings have dimensions to be measured", { timeout: 120_000 }, async () => {
    const page = await shown.page({ viewport: { width: Math.floor(wide * MM), height: Math.floor(high * MM) } });
    await page.emulateMedia({ media: "print" });
    await page.goto(shown.fileUrl("builds/over-stage-banner.html"));
    const drawings = (await page.evaluate(MEASURE)) as readonly Measured[];
    expect(
      drawings.filter(({ ratio, smaller, lines }) => ratio !== null && !smaller && lines.length > 1).length,
    ).toBeGreaterThan(4);
    await page.close();
  });
});
