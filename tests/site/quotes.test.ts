import { rules } from "@plumbmark/rules";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Shown, show } from "./browser.js";
import { starterFiles, TODAY } from "./starter-files.js";

// A figure quoted in the prose opens the working behind it: with a pointer, with keys, with a finger, without a script.
// HTML, 6.12: a popover of the state `auto` closes when something else is opened, pressed, or Escape is.

const TEXT = `---
build: quoted
title: Quoted
status: draft
faces:
  wall: {panel: tile-500-p3.1, columns: 4, rows: 2, support: wall, height-above: 1 m}
---

# Quoted

The wall weighs [63.2 kg](calc:faces.wall.mass) and is [2 m](calc:faces.wall.width) wide.

Who reads on finds nothing to press here.
`;

let shown: Shown;
beforeAll(async () => {
  shown = await show({
    files: { ...starterFiles, documents: [{ path: "builds/q.md", text: TEXT }] },
    rules,
    today: TODAY,
  });
});
afterAll(() => shown?.close());

const opened = async (options: Parameters<Shown["page"]>[0] = {}) => {
  const page = await shown.page(options);
  await page.goto(shown.fileUrl("builds/quoted.html"));
  const open = async (): Promise<readonly string[]> =>
    (await page.locator("[popover]:visible").allTextContents()) as string[];
  return {
    page,
    open,
    mass: page.getByRole("button", { name: "63.2 kg", exact: true }),
    width: page.getByRole("button", { name: "2 m", exact: true }),
  };
};

/** By hand: 8 panels of 7.9 kg are 63.2 kg, and 4 panels of 500 mm are 2 m. */
const MASS = /8 × 7\.9 kg = 63\.2 kg/u;
const WIDTH = /4 × 500 mm|4 × 0\.5 m/u;

const isWithin = async (page: Page): Promise<boolean> => {
  const box = await page.locator("[popover]:visible").boundingBox();
  const { width = 0, height = 0 } = page.viewportSize() ?? {};
  return box !== null && box.x >= 0 && box.y >= 0 && box.x + box.width <= width && box.y + box.height <= height;
};

describe("a quoted figure", () => {
  it.each([
    ["on a desk", { viewport: { width: 1280, height: 800 } }],
    ["on a phone", { viewport: { width: 360, height: 640 } }],
    ["without scripts", { javaScriptEnabled: false }],
  ] as const)("opens its working with a pointer %s, one at a time, and closes it again", async (_, options) => {
    const { page, open, mass, width } = await opened(options);
    expect(await open()).toEqual([]);
    await mass.click();
    expect(await open()).toEqual([expect.stringMatching(MASS)]);
    expect(await isWithin(page)).toBe(true);
    await page.mouse.click(3, 3);
    expect(await open()).toEqual([]);
    await width.click();
    expect(await open()).toEqual([expect.stringMatching(WIDTH)]);
    await page.close();
  });

  it("opens its working at the touch of a finger", async () => {
    const { page, open, mass } = await opened({ viewport: { width: 360, height: 640 }, hasTouch: true });
    await mass.tap();
    expect(await open()).toEqual([expect.stringMatching(MASS)]);
    await page.close();
  });

  it.each(["Enter", "Space"])(
    "is reached by the tab key, opens its working with %s, and Escape leads back to it",
    async (key) => {
      const { page, open, mass, width } = await opened();
      const focused = (): Promise<string> => page.evaluate("document.activeElement.textContent");
      for (let step = 0; step < 400 && (await focused()) !== "63.2 kg"; step += 1) await page.keyboard.press("Tab");
      expect(await focused()).toBe("63.2 kg");
      await page.keyboard.press(key);
      expect(await open()).toEqual([expect.stringMatching(MASS)]);
      await page.keyboard.press("Escape");
      expect(await open()).toEqual([]);
      expect(await focused()).toBe("63.2 kg");
      await page.keyboard.press("Tab");
      expect(await width.evaluate((button) => button === button.ownerDocument.activeElement)).toBe(true);
      await page.keyboard.press(key);
      expect(await open()).toEqual([expect.stringMatching(WIDTH)]);
      expect(await mass.isVisible()).toBe(true);
      await page.close();
    },
  );

  it("is a plain figure on paper, and its working stays away", async () => {
    const { page, open } = await opened();
    await page.emulateMedia({ media: "print" });
    expect(await open()).toEqual([]);
    expect(await page.evaluate(`document.querySelector(".prose p").innerText`)).toMatch(
      /weighs 63.2 kg and is 2 m wide/u,
    );
    await page.close();
  });

  it("asks for nothing and says nothing while it is looked at", () => {
    expect(shown.troubles).toEqual([]);
  });
});
