import { existsSync } from "node:fs";
import { join, posix } from "node:path";
import { fileURLToPath } from "node:url";
import { rules } from "@plumbmark/rules";
import axe from "axe-core";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Shown, show } from "./browser.js";
import { starterFiles, TODAY } from "./starter-files.js";

// One of every kind: a build that is not ready, one that is, a draft with open checks, a rule with settings.
const kinds = [
  "index.html",
  "builds/gala-wall.html",
  "builds/over-stage-banner.html",
  "builds/gallery-header.html",
  "rules/index.html",
  "rules/power.circuit-load.html",
  "rules/rigging.point-load.html",
  "house-standard.html",
  "parts.html",
  "stock.html",
  "sources.html",
  "formulas.html",
  "tables.html",
  "search.html",
];
const WHERE = ["file", "server"] as const;

let shown: Shown;
let page: Page;

beforeAll(async () => {
  shown = await show({ files: starterFiles, rules, today: TODAY });
  page = await shown.page();
});

afterAll(async () => {
  await shown?.close();
});

const url = (where: (typeof WHERE)[number], path: string): string =>
  where === "file" ? shown.fileUrl(path) : shown.serverUrl(path);
const open = (path: string, where: (typeof WHERE)[number] = "file") => page.goto(url(where, path));
const htmlPages = (): readonly string[] => shown.paths.filter((path) => path.endsWith(".html"));

interface Anchors {
  readonly ids: readonly string[];
  readonly links: readonly string[];
}

/** Ids of a page and where its local links lead, as the browser resolves them. */
const anchorsOf = (): Promise<Anchors> =>
  page.evaluate(`({
    ids: [...document.querySelectorAll("[id]")].map((each) => each.id),
    links: [...document.querySelectorAll("a[href], link[href], img[src], script[src]")]
      .map((each) => each.href || each.src)
      .filter((href) => !/^(https?:\\/\\/(?!127\\.0\\.0\\.1)|mailto:)/.test(href)),
  })`);

describe.each(WHERE)("from a %s", (where) => {
  it("every page and every anchor a page leads to is there, and nothing is asked for from elsewhere", {
    timeout: 240_000,
  }, async () => {
    const found = new Map<string, Anchors>();
    for (const path of htmlPages()) {
      await open(path, where);
      found.set(path, await anchorsOf());
    }
    const base = url(where, "");
    const wrong: string[] = [];
    for (const [path, { links, ids }] of found) {
      if (new Set(ids).size !== ids.length) wrong.push(`${path} has an id twice`);
      for (const link of links) {
        const [target, fragment] = link.split("#") as [string, string | undefined];
        const file = decodeURIComponent(target.slice(base.length));
        if (!target.startsWith(base) || !existsSync(join(shown.folder, file))) wrong.push(`${path} leads to ${link}`);
        else if (fragment && !found.get(posix.normalize(file))?.ids.includes(decodeURIComponent(fragment)))
          wrong.push(`${path} leads to ${link}, where there is no such place`);
      }
    }
    expect(found.size).toBeGreaterThan(60);
    expect(wrong).toEqual([]);
    expect(shown.troubles).toEqual([]);
  });

  it("the search finds a rule by a misspelt word, by the keyboard alone", async () => {
    await open("search.html", where);
    // The box has the focus already.
    await page.keyboard.type("cicruit load");
    expect(await page.locator("#Found a").first().textContent()).toBe("power.circuit-load");
    expect(await page.getByRole("status").textContent()).toMatch(/found/u);
    await page.keyboard.press("Enter");
    await page.waitForURL(/power\.circuit-load\.html$/u);
    expect(shown.troubles).toEqual([]);
  });

  it.each([
    ["build", "hrbour stage", "Header over the harbour stage"],
    ["part", "shackel", "shackle-3-8"],
    ["lot", "24-31", "lot-2431"],
    ["rule", "deflecton", "rigging.bar-deflection"],
  ])("the search finds a %s by %s", async (kind, words, title) => {
    await open("search.html", where);
    await page.getByLabel("A rule, a build, a part or a lot").fill(words);
    const first = page.locator("#Found li").filter({ hasText: title }).first();
    expect(await first.textContent()).toContain(` ${kind}.`);
    expect(
      (await page.locator("#Found li").allTextContents()).findIndex((text) => text.startsWith(title)),
    ).toBeLessThan(3);
  });

  it("leads from the register to a sheet and on to a rule", async () => {
    await open("index.html", where);
    await page.getByRole("link", { name: "Over-stage text banner" }).click();
    expect(await page.getByRole("heading", { level: 1 }).textContent()).toBe("Over-stage text banner");
    // Topics whose checks all hold are told in a line, and open on asking.
    await page.locator("details.topic > summary", { hasText: "Power" }).click();
    await page.getByRole("link", { name: "power.circuit-load" }).first().click();
    expect(await page.getByRole("heading", { level: 1 }).textContent()).toBe("power.circuit-load");
  });
});

describe("without scripts", () => {
  it("everything but the search is there, and the search says where to look instead", async () => {
    const plain = await shown.page({ javaScriptEnabled: false });
    await plain.goto(shown.fileUrl("search.html"));
    expect(await plain.getByRole("searchbox").count()).toBe(0);
    await plain.getByRole("main").getByRole("link", { name: "index of rules" }).click();
    await plain.getByRole("link", { name: "rigging.point-load" }).first().click();
    await plain.locator("details.example summary").first().click();
    expect(await plain.locator("details.example pre").first().isVisible()).toBe(true);
    await plain.close();
  });
});

describe.each(["light", "dark"] as const)("in %s", (colorScheme) => {
  // axe-core checks the success criteria of WCAG 2.2, levels A and AA, that a program can check, and best practice.
  it.each(kinds)("axe finds nothing on %s", { timeout: 120_000 }, async (path) => {
    await page.emulateMedia({ colorScheme });
    await open(path);
    await page.evaluate(axe.source);
    const found = (await page.evaluate("axe.run()")) as axe.AxeResults;
    expect(found.passes.length).toBeGreaterThan(10);
    expect(found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html: text }) => text).join(" ")}`)).toEqual(
      [],
    );
    await page.emulateMedia({ colorScheme: "light" });
  });
});

describe("width", () => {
  // WCAG 2.2, 1.4.10 Reflow: 320 CSS pixels without scrolling sideways, save in tables, which scroll by themselves.
  it.each([320, 360, 1600])("no page scrolls sideways at %i pixels", { timeout: 240_000 }, async (width) => {
    await page.setViewportSize({ width, height: 800 });
    const wide: string[] = [];
    for (const path of htmlPages()) {
      await open(path);
      const needs = Number(await page.evaluate("document.documentElement.scrollWidth"));
      if (needs > width) wide.push(`${path} needs ${needs}`);
    }
    expect(wide).toEqual([]);
    await page.setViewportSize({ width: 1280, height: 800 });
  });
});

describe("the content security policy", () => {
  it("keeps a script out that is put into a page, and styles of elements", async () => {
    await open("index.html");
    const policy = await page.evaluate(`document.querySelector("meta[http-equiv]").content`);
    expect(policy).toContain("default-src 'none'");
    await page.evaluate(`{
      const script = document.createElement("script");
      script.textContent = "window.ran = true";
      document.body.append(script);
      document.body.insertAdjacentHTML("beforeend", "<img src=x onerror='window.ran = true'><p id=P style='color: red'>x</p>");
    }`);
    await page.waitForTimeout(100);
    expect(await page.evaluate("window.ran")).toBeUndefined();
    expect(await page.evaluate(`getComputedStyle(document.getElementById("P")).color`)).not.toBe("rgb(255, 0, 0)");
    // What was tried is told on the console; nothing else is.
    expect(shown.troubles.length).toBeGreaterThan(0);
    shown.troubles.length = 0;
  });
});

it("is looked at where it lies", () => {
  expect(existsSync(fileURLToPath(shown.fileUrl("index.html")))).toBe(true);
});
