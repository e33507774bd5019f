import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { publish, writeSite } from "@plumbmark/docs-site";
import { rules } from "@plumbmark/rules";
import chromium from "@sparticuz/chromium";
import axe from "axe-core";
import { type Browser, chromium as driver, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { starterFiles, TODAY } from "./starter-files.js";

const pages = publish({ files: starterFiles, rules, today: TODAY });
// One of every kind: a build that is not ready, one that is, a draft with open checks, a rule with settings.
const kinds = [
  "index.html",
  "builds/gala-wall.html",
  "builds/over-stage-banner.html",
  "builds/gallery-header.html",
  "rules/index.html",
  "rules/power.circuit-load.html",
];
const top = mkdtempSync(join(tmpdir(), "site-"));
const site = join(top, "site");
let browser: Browser;
let page: Page;

beforeAll(async () => {
  await writeSite(pages, site);
  // No other arguments: those the package proposes switch off what keeps file:// pages apart.
  browser = await driver.launch({ executablePath: await chromium.executablePath(), args: ["--no-sandbox"] });
  page = await browser.newPage();
});

afterAll(async () => {
  await browser?.close();
  rmSync(top, { recursive: true });
});

const open = (path: string) => page.goto(pathToFileURL(join(site, path)).href);

describe("from a folder, without a web server", () => {
  // axe-core checks the success criteria of WCAG 2.2, levels A and AA, that a program can check, and best practice.
  it.each(kinds)("axe finds nothing on %s", async (path) => {
    await open(path);
    await page.evaluate(axe.source);
    const found = await page.evaluate("axe.run()") as axe.AxeResults;
    expect(found.passes.length).toBeGreaterThan(10);
    expect(found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html: text }) => text).join(" ")}`)).toEqual([]);
  });

  it("leads from the register to a sheet and on to a rule", async () => {
    await open("index.html");
    await page.getByRole("link", { name: "Over-stage text banner" }).click();
    expect(await page.getByRole("heading", { level: 1 }).textContent()).toBe("Over-stage text banner");
    await page.getByRole("link", { name: "power.circuit-load" }).first().click();
    expect(await page.getByRole("heading", { level: 1 }).textContent()).toBe("power.circuit-load");
  });

  // WCAG 2.2, 1.4.10 Reflow: 320 CSS pixels without scrolling sideways, save in tables, which scroll by themselves.
  it.each(["index.html", "builds/over-stage-banner.html", "rules/power.circuit-load.html"])("%s fits 320 pixels", async (path) => {
    await page.setViewportSize({ width: 320, height: 640 });
    await open(path);
    expect(await page.evaluate("document.documentElement.scrollWidth")).toBeLessThanOrEqual(320);
  });
});
