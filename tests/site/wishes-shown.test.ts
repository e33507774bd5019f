import { rules } from "@plumbmark/rules";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { BANNER, starterFiles, TODAY } from "../draft/drafting.js";
import { axeOf } from "./axe.js";
import { type Shown, show } from "./browser.js";

const PATH = "wishes/spring-banner.html";
// ISO 216 A4 less margins of 12 mm at the sides; a CSS pixel is 1/96 in.
const A4 = Math.floor((210 - 24) * (96 / 25.4));

let shown: Shown;
let page: Page;
beforeAll(async () => {
  shown = await show({
    files: starterFiles(),
    rules,
    today: TODAY,
    wishes: [{ path: "wishes/spring-banner.yaml", text: BANNER }],
  });
  page = await shown.page();
  await page.goto(shown.fileUrl(PATH));
});
afterAll(() => shown?.close());

/** Elements that reach past the page, but those that scroll by themselves. */
const OVER = (wide: number): string => `[...document.querySelectorAll("body *")].filter((each) => {
  const { width, right } = each.getBoundingClientRect();
  return width > 0 && right > ${wide} + 1 && !each.closest(".wide");
}).map((each) => each.tagName + " " + each.textContent.slice(0, 40))`;

/** Places of the options and of what each begins with. */
const PLACES = `[...document.querySelectorAll(".option")].map((each) => {
  const at = (name) => Math.round(each.querySelector(name).getBoundingClientRect().top);
  return { left: Math.round(each.getBoundingClientRect().left), drawing: at("svg"), words: at("p"), figures: at("dl"),
    scale: each.querySelector("svg").getBoundingClientRect().width / each.querySelector("svg").viewBox.baseVal.width };
})`;

interface Placed {
  readonly left: number;
  readonly drawing: number;
  readonly words: number;
  readonly figures: number;
  readonly scale: number;
}

describe("a wish before a client", () => {
  it.each([320, 390, 1400])("fits a screen of %i pixels", async (width) => {
    await page.setViewportSize({ width, height: 900 });
    expect(await page.evaluate(OVER(width))).toEqual([]);
    expect(await page.evaluate("document.documentElement.scrollWidth")).toBeLessThanOrEqual(width);
  });

  it("has options side by side on a wide screen, whatever belongs together on one line and all drawings alike", async () => {
    await page.setViewportSize({ width: 1400, height: 900 });
    const places = (await page.evaluate(PLACES)) as readonly Placed[];
    expect(places.length).toBeGreaterThan(1);
    expect(new Set(places.map(({ left }) => left)).size).toBe(places.length);
    for (const key of ["drawing", "words", "figures"] as const)
      expect(new Set(places.map((each) => each[key])).size).toBe(1);
    for (const { scale } of places) expect(scale).toBeCloseTo(places[0]?.scale ?? 0, 3);
  });

  it("stands one below another on a phone, in one scale all the same", async () => {
    await page.setViewportSize({ width: 390, height: 900 });
    const places = (await page.evaluate(PLACES)) as readonly Placed[];
    expect(new Set(places.map(({ left }) => left)).size).toBe(1);
    for (const { scale } of places) expect(scale).toBeCloseTo(places[0]?.scale ?? 0, 3);
  });

  it("prints whole on A4, with the words that it is a draft", async () => {
    await page.setViewportSize({ width: A4, height: 1000 });
    await page.emulateMedia({ media: "print" });
    expect(await page.evaluate(OVER(A4))).toEqual([]);
    expect(await page.locator("p.notice").first().isVisible()).toBe(true);
    expect(await page.locator("#Cautions").isVisible()).toBe(true);
    await page.emulateMedia({ media: "screen" });
  });

  // Before axe, which asks for the style sheets a second time.
  it("asks for nothing that does not lie in the site", () => expect(shown.troubles).toEqual([]));

  it.each(["light", "dark"] as const)("has nothing axe finds, in %s", { timeout: 120_000 }, async (colorScheme) => {
    await page.setViewportSize({ width: 1400, height: 900 });
    const { passes, violations } = await axeOf(page, colorScheme);
    expect(passes).toBeGreaterThan(colorScheme === "light" ? 10 : 0);
    expect(violations).toEqual([]);
  });
});
