import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import type {} from "../../run/browser.js";
import { notEmpty } from "../../run/not-empty.js";
import { drawn } from "./subjects.js";

let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await chromium.connect(inject("browser"));
  page = await browser.newPage();
});
afterAll(async () => {
  await browser?.close();
});

interface Label {
  readonly words: string;
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
}

/** Every text of the drawing where the browser really puts it, in the drawing's own millimetres. */
const LABELS = `[...document.querySelectorAll("text")].map((each) => {
  const box = each.getBBox();
  const turn = each.transform.baseVal.consolidate();
  const corners = [[box.x, box.y], [box.x + box.width, box.y + box.height]].map(([x, y]) =>
    turn ? new DOMPoint(x, y).matrixTransform(turn.matrix) : { x, y });
  const x = Math.min(corners[0].x, corners[1].x), y = Math.min(corners[0].y, corners[1].y);
  return { words: each.textContent, box: { x, y, width: Math.abs(corners[0].x - corners[1].x), height: Math.abs(corners[0].y - corners[1].y) } };
})`;

async function labelsOf(text: string): Promise<readonly Label[]> {
  await page.setContent(`<!DOCTYPE html><body>${text.replace(/^<\?xml[^>]*>/u, "")}</body>`);
  return page.evaluate(LABELS);
}

/** Share of the smaller label that the other one covers. A line of text is higher than its letters: that much may overlap. */
function covered({ box: a }: Label, { box: b }: Label): number {
  const width = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const height = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return width > 0 && height > 0 ? (width * height) / Math.min(a.width * a.height, b.width * b.height) : 0;
}

describe("in the browser", () => {
  it.each(notEmpty(drawn))(
    "$name: every label is inside the drawing, and none lies on another",
    async ({ text, drawing }) => {
      const labels = await labelsOf(text);
      expect(labels.length).toBeGreaterThan(2);
      const outside = labels.filter(
        ({ box }) =>
          box.x < -0.1 ||
          box.y < -0.1 ||
          box.x + box.width > drawing.width + 0.1 ||
          box.y + box.height > drawing.height + 0.1,
      );
      expect(outside.map(({ words }) => words)).toEqual([]);
      const sorted = [...labels].sort((a, b) => a.box.y - b.box.y);
      const clashes = sorted.flatMap((one, index) => {
        const found: string[] = [];
        for (const other of sorted.slice(index + 1)) {
          if (other.box.y > one.box.y + one.box.height) break;
          if (covered(one, other) > 0.1) found.push(`${one.words} | ${other.words}`);
        }
        return found;
      });
      expect(clashes).toEqual([]);
    },
  );
});
