import { outlineOf, type RepositoryFiles, type SourceFile } from "@plumbmark/core";
import { draftedWish, htmlText, optionSheet, publish } from "@plumbmark/docs-site";
import { rules } from "@plumbmark/rules";
import { HtmlValidate } from "html-validate";
import { beforeAll, describe, expect, test } from "vitest";
import { ResultCache } from "../../packages/cli/src/engine/cache/cache.js";
import { draftWishesCached } from "../../packages/cli/src/engine/cache/wishes-cached.js";
import { BANNER, laidOut, opened, PATH, starterFiles, TODAY } from "../draft/drafting.js";
import { ownPagesOf } from "./page-of.js";

const wish = (text: string, path = "wishes/spring-banner.yaml"): SourceFile => ({ path, text });
const BROKEN = "wish: odd\ntitle: Odd\nsupport: hung\n";

let pages: ReadonlyMap<string, string>;
beforeAll(() => {
  const wishes = [wish(BANNER), wish(BROKEN, "wishes/odd.yaml")];
  pages = ownPagesOf({ files: starterFiles(), rules, today: TODAY, wishes });
});

const page = (): string => pages.get("wishes/spring-banner.html") ?? "";
const words = (html: string): string => html.replace(/<[^>]*>/gu, " ").replace(/\s+/gu, " ");

describe("a wish on the site", () => {
  test("has a page that the register leads to, and says what came of it", () => {
    const register = pages.get("index.html") ?? "";
    expect(register).toContain(`<a href="wishes/spring-banner.html">Spring concert banner</a>`);
    expect(words(register)).toContain("can be met");
  });

  test("is a draft before all else, on the page, in every drawing and at the foot of a print", () => {
    const [notice] = /<p class="notice">(.*?)<\/p>/u.exec(page())?.slice(1) ?? [];
    expect(notice).toBe("DRAFT. Do not build from it.");
    const drawings = page().split("<svg").slice(1);
    expect(drawings.length).toBeGreaterThan(3);
    for (const drawing of drawings) expect(drawing).toContain("DRAFT. Do not build from it.");
    // Its style is made last of all: here of a site that has nothing else.
    const bare = publish({ files: { parts: [], documents: [] }, rules: [], today: TODAY, wishes: [wish(BROKEN)] });
    expect(bare.get("wishes/draft.css")).toMatch(/@bottom-left \{ content: "DRAFT\. Do not build from it\./u);
    expect(words(page())).toContain("qualified riggers");
  });

  test("has prose as prose: no mark of what it was written in", () => expect(words(page())).not.toMatch(/`/u));

  test("is sound HTML, and so is the page of the stock", async () => {
    const validator = new HtmlValidate({ extends: ["html-validate:recommended"] });
    for (const path of ["wishes/spring-banner.html", "wishes/odd.html", "stock.html"]) {
      const { results } = await validator.validateString(pages.get(path) ?? "", path);
      expect(results.flatMap(({ messages }) => messages.map(({ ruleId, message }) => `${ruleId}: ${message}`))).toEqual(
        [],
      );
    }
  });

  test("with a slip says where it is, and drafts nothing", () => {
    const odd = words(pages.get("wishes/odd.html") ?? "");
    expect(odd).toContain("wishes/odd.yaml:3:10");
    expect(odd).toContain("Nothing was drafted");
    expect(words(pages.get("index.html") ?? "")).toContain("has to be mended first");
  });

  test("draws the faces of all options to one scale, over one floor", () => {
    const elevations = page()
      .split("<svg")
      .slice(1)
      .filter((each) => each.includes(">Seen from the audience</title>"));
    expect(elevations.length).toBeGreaterThan(1);
    const measured = elevations.map((each) => {
      const [, metres = "", drawn = ""] = /data-metres="([\d.]+)" data-drawn="([\d.]+)"/u.exec(each) ?? [];
      const [, width = ""] = /viewBox="0 0 ([\d.]+) /u.exec(each) ?? [];
      return { metres: Number(metres), scale: Number(drawn) / Number(metres), width };
    });
    // Whole panels of 500 mm (the starter's part), the widest first: six of them are 3 m.
    expect(measured[0]?.metres).toBeCloseTo(3, 9);
    expect(new Set(measured.map(({ metres }) => metres)).size).toBeGreaterThan(1);
    for (const { scale, width } of measured) {
      expect(scale).toBeCloseTo(measured[0]?.scale ?? 0, 2);
      expect(width).toBe(measured[0]?.width);
    }
    // Architects' scales (common practice): a whole number of 1/128 in to the foot.
    const inches = (12 * (measured[0]?.scale ?? 0)) / 1000;
    expect(inches * 128).toBeCloseTo(Math.round(inches * 128), 0);
  });
});

const SMALL = `wish: small\ntitle: Small\non-site: 2027-05-14 to 2027-05-16\nsupport: wall\nsize: {width: at most 2 m, height: at most 1 m}\nout-of: lot-2431\n`;

test("the sheet of the command stands by itself and loads nothing", () => {
  const laid = laidOut(SMALL);
  const repository = opened();
  const subjects = laid.options.map(({ document }) => {
    repository.replace(PATH, document, "document");
    return repository.model(PATH);
  });
  const record = {
    title: "T",
    wish: "w",
    "not-said": [],
    options: [],
    dominated: [],
    "fell-out": [],
    "not-looked-at": [],
  };
  const html = optionSheet({ record: { draft: 1, file: "w.yaml", units: "us", ...record }, subjects, today: TODAY });
  expect(html).not.toMatch(/\b(?:src|href)="(?!#)/u);
  expect(words(html)).toContain("Nothing that is on offer meets this wish.");
});

describe("what came of a wish is kept", () => {
  const named = (file: SourceFile, id = file.text) => ({
    ...file,
    id: String(id.length) + id.slice(-40),
    outline: outlineOf(file),
  });
  const at = (name: string, days: string) => ({
    path: `builds/${name}.md`,
    text: `---\nbuild: ${name}\ntitle: ${name}\nrevision: 1\nstatus: for-build\non-site: ${days}\nfaces:\n  wall: {panel: tile-500-p3.1, columns: 4, rows: 2, spares: 1, lot: lot-2431}\n---\n\n# ${name}\n`,
  });
  const cache = new ResultCache(undefined, "e".repeat(64));
  /** What was drafted anew. */
  const drafted = (text: string, documents: RepositoryFiles["documents"]): readonly string[] => {
    const told: string[] = [];
    draftWishesCached(
      [wish(text, "wishes/small.yaml")],
      { files: { ...starterFiles(), documents }, rules, today: TODAY },
      cache,
      (words) => told.push(words),
    );
    return told;
  };
  const there = [named(at("near", "2027-05-15")), named(at("far", "2027-09-01"))];

  test("until the wish, or a build on its days, is another", () => {
    expect(drafted(SMALL, there)).toEqual(["Drafting wishes/small.yaml"]);
    expect(drafted(SMALL, there)).toEqual([]);
    expect(drafted(SMALL.replace("2 m", "3 m"), there)).toHaveLength(1);
    const [near, far] = there as [(typeof there)[number], (typeof there)[number]];
    expect(drafted(SMALL, [near, named({ ...far, text: `${far.text}\nMore.\n` })])).toEqual([]);
    expect(drafted(SMALL, [named({ ...near, text: `${near.text}\nMore.\n` }), far])).toHaveLength(1);
  });

  test("and is the same as drafted anew", () => {
    const input = { files: { ...starterFiles(), documents: there }, rules, today: TODAY };
    const [kept] = draftWishesCached([wish(SMALL, "wishes/small.yaml")], input, cache, () => undefined);
    const anew = draftedWish(wish(SMALL, "wishes/small.yaml"), input);
    // What is kept is kept as text: nothing may be in it that text does not hold.
    expect(kept).toEqual(anew);
    expect(htmlText(JSON.parse(JSON.stringify(anew)).content)).toBe(htmlText(anew.content));
  });
});
