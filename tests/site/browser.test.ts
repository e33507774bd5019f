import { existsSync, readFileSync } from "node:fs";
import { join, posix } from "node:path";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { some } from "../run/some.js";
import { axeOf } from "./axe.js";
import { type Shown, showStarter } from "./browser.js";
import { inSchemes } from "./schemes.js";

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
  shown = await showStarter();
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

const NARROWEST = 320;
const SCREENS = [NARROWEST, 360, 1600] as const;
const { deep, seed } = inject("effort");
/**
 * One page of every kind, and of the others so many, other ones in each run; a deep run visits all. That every link of
 * every page leads somewhere is looked at without a browser, too.
 */
const SHARE = deep ? 1 : 6;
const someOf = (paths: readonly string[]): readonly string[] => some(paths, Math.ceil(paths.length / SHARE), seed);
const visitedPages = (): readonly string[] => [...new Set([...kinds, ...someOf(htmlPages())])];

/** How wide a page is on one screen, and the `tabindex` of every formula that is longer than the screen is wide. */
interface Look {
  readonly needs: number;
  readonly long: readonly (string | null)[];
}

const LOOK = `({
  needs: document.documentElement.scrollWidth,
  long: [...document.querySelectorAll("math")]
    .filter((each) => each.scrollWidth > each.clientWidth)
    .map((each) => each.getAttribute("tabindex")),
})`;

interface Visit extends Anchors {
  readonly looks: ReadonlyMap<number, Look>;
}

/**
 * Pages, each opened once: what it leads to, and how it looks: from a folder on the narrowest screen, and some of them
 * on all; from a server, which serves the same bytes, on none.
 */
async function visitAll(where: (typeof WHERE)[number]): Promise<ReadonlyMap<string, Visit>> {
  const found = new Map<string, Visit>();
  const onAll = new Set(someOf(visitedPages()));
  const screensOf = (path: string): readonly number[] => {
    if (where === "server") return [];
    return onAll.has(path) ? SCREENS : [NARROWEST];
  };
  for (const path of where === "file" ? visitedPages() : someOf(visitedPages())) {
    await open(path, where);
    const looks = new Map<number, Look>();
    for (const width of screensOf(path)) {
      await page.setViewportSize({ width, height: 800 });
      looks.set(width, await page.evaluate(LOOK));
    }
    found.set(path, { ...(await anchorsOf()), looks });
  }
  await page.setViewportSize({ width: 1280, height: 800 });
  return found;
}

const visits = new Map<string, Promise<ReadonlyMap<string, Visit>>>();
const visited = (where: (typeof WHERE)[number]): Promise<ReadonlyMap<string, Visit>> => {
  const all = visits.get(where) ?? visitAll(where);
  visits.set(where, all);
  return all;
};

describe.each(WHERE)("from a %s", (where) => {
  it("every page and every anchor a page leads to is there, and nothing is asked for from elsewhere", {
    timeout: 240_000,
  }, async () => {
    const found = await visited(where);
    // A page has the same places wherever it is opened from; one that was not opened has those of its text.
    const places = await visited("file");
    const has = (file: string, id: string): boolean =>
      places.get(file)?.ids.includes(id) ?? readFileSync(join(shown.folder, file), "utf8").includes(` id="${id}"`);
    const base = url(where, "");
    const wrong: string[] = [];
    for (const [path, { links, ids }] of found) {
      if (new Set(ids).size !== ids.length) wrong.push(`${path} has an id twice`);
      for (const link of links) {
        const [target, fragment] = link.split("#") as [string, string | undefined];
        const file = decodeURIComponent(target.slice(base.length));
        if (!target.startsWith(base) || !existsSync(join(shown.folder, file))) wrong.push(`${path} leads to ${link}`);
        else if (fragment && !has(posix.normalize(file), decodeURIComponent(fragment)))
          wrong.push(`${path} leads to ${link}, where there is no such place`);
      }
    }
    expect(places.size).toBeGreaterThanOrEqual(htmlPages().length / SHARE);
    expect(places.size).toBeGreaterThan(30);
    expect(found.size).toBeGreaterThanOrEqual(places.size / SHARE);
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
    await page.getByLabel("A rule, a build, a part, a lot or a key").fill(words);
    const first = page.locator("#Found li").filter({ hasText: title }).first();
    expect(await first.textContent()).toContain(` ${kind}.`);
    expect(
      (await page.locator("#Found li").allTextContents()).findIndex((text) => text.startsWith(title)),
    ).toBeLessThan(3);
  });

  it("leads from the register to a sheet and on to a rule", async () => {
    await open("index.html", where);
    await page.getByLabel("Builds", { exact: true }).getByRole("link", { name: "Over-stage text banner" }).click();
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

describe("whoever sees badly", () => {
  // axe-core checks the success criteria of WCAG 2.2, levels A and AA, that a program can check, and best practice.
  it.each(notEmpty(inSchemes(kinds)))(
    "axe finds nothing on %s, in %s",
    { timeout: 120_000 },
    async (path, colorScheme) => {
      await open(path);
      const { passes, violations } = await axeOf(page, colorScheme);
      expect(passes).toBeGreaterThan(colorScheme === "light" ? 10 : 0);
      expect(violations).toEqual([]);
    },
  );
});

describe("width", () => {
  // WCAG 2.2, 1.4.10 Reflow: 320 CSS pixels without scrolling sideways, save in tables, which scroll by themselves.
  it.each(SCREENS)("no page scrolls sideways at %i pixels", { timeout: 240_000 }, async (width) => {
    const needs = [...(await visited("file"))].flatMap(([path, { looks }]) => {
      const look = looks.get(width);
      return look ? [[path, look.needs] as const] : [];
    });
    expect(needs.length).toBeGreaterThan(width === NARROWEST ? 30 : 30 / SHARE);
    expect(needs.filter(([, each]) => !(Number(each) <= width))).toEqual([]);
  });

  // WCAG 2.2, 2.1.1: what scrolls can be scrolled with keys.
  it("a formula that is longer than a phone is wide is reached with keys", async () => {
    const long = [...(await visited("file"))].flatMap(([path, { looks }]) =>
      (looks.get(320)?.long ?? []).map((tabindex) => [path, tabindex] as const),
    );
    expect(long.length).toBeGreaterThan(5);
    expect(long.filter(([, tabindex]) => tabindex !== "0")).toEqual([]);
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
