import { readFileSync } from "node:fs";
import type { RepositoryFiles, SourceFile } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { some } from "../run/some.js";
import { type Shown, show } from "./browser.js";
import { PAYLOADS as ALL } from "./payloads.js";
import { TODAY } from "./starter-files.js";

/** Words the search is asked for. */
const WORDS = ["script", "onerror", "evil", "javascript"];
const having = (word: string): readonly string[] => ALL.filter((each) => each.includes(word)).slice(0, 1);

const { deep, seed } = inject("effort");
/** Each has a sheet of its own: an ordinary run tries some, other ones each time, and a deep run all. */
const PAYLOADS = deep ? ALL : [...new Set([...WORDS.flatMap(having), ...some(ALL, 12, seed)])];

const quoted = (text: string): string => JSON.stringify(text);
/** A key of YAML, a name of a part, has to be of one line. */
const line = (text: string): string => text.replace(/[\r\n]+/gu, " ");
/** Everything but a zero byte and a slash can stand in the name of a file. */
const fileName = (text: string): string => line(text).replaceAll("/", "∕").slice(0, 120);

/** One document with the payload in every field an author fills in, and in every way of writing prose. */
function document(payload: string, number: number): SourceFile {
  const text = `---
build: ${quoted(payload)}
title: ${quoted(`${payload} title`)}
revision: ${quoted(payload)}
status: ${quoted(payload)}
venue: ${quoted(payload)}
on-site: ${quoted(payload)}
prepared-by: ${quoted(payload)}
approved-by: ${quoted(payload)}
${quoted(line(payload))}: an unknown key
faces:
  ${quoted(line(payload))}: {panel: ${quoted(line(payload))}, columns: 2, rows: 1, support: wall, height-above: 1 m, lot: ${quoted(payload)}}
power:
  circuits: {${quoted(line(payload))}: {supply: 120 V, breaker: 20 A, outlet: ${quoted(payload)}}}
  runs: {${quoted(line(payload))}: {from: ${quoted(line(payload))}, feed: {part: ${quoted(line(payload))}, length: 2 m}, panels: ${quoted(payload)}}}
data:
  processor: {part: ${quoted(line(payload))}, place: ${quoted(payload)}}
  chains: {${quoted(line(payload))}: {port: 1, panels: ${quoted(payload)}}}
waivers:
  - {rule: ${quoted(payload)}, because: ${quoted(payload)}, by: ${quoted(payload)}, until: ${quoted(payload)}}
---

# ${line(payload)}

${payload}

- ${line(payload)}
- [ ] ${line(payload)}

| ${line(payload).replaceAll("|", "\\|")} | b |
|---|---|
| ${line(payload).replaceAll("|", "\\|")} | \`${line(payload)}\` |

> ${line(payload)}

[words](${line(payload)}) ![words](${line(payload)} "${line(payload)}") [words][ref] and a note[^note]

[ref]: ${line(payload)}
[^note]: ${line(payload)}

\`\`\`${line(payload)}
${payload}
\`\`\`
`;
  return { path: `builds/${fileName(payload)}-${number}.md`, text };
}

const parts = (payload: string, number: number): SourceFile => ({
  path: `parts/${fileName(payload)}-${number}.yaml`,
  text: `${quoted(`${line(payload)} ${number}`)}: {kind: spare-part, mass: 1 kg, fits: ${quoted(payload)}}\n${quoted(line(payload))}: {kind: panel, size: 500 mm x 500 mm, ${quoted(line(payload))}: x}\n`,
});

const files: RepositoryFiles = {
  houseStandard: {
    path: "house-standard.yaml",
    text: `house-standard: ${quoted(PAYLOADS.join(" "))}\nsections: [${PAYLOADS.map(quoted).join(", ")}]\nown-rules:\n${PAYLOADS.map(
      (payload, number) =>
        `  house.rule-${number}: {states: ${quoted(payload)}, why: ${quoted(payload)}, level: should, each: faces, require: {properties: {spares: {minimum: 2}}}, mend: ${quoted(payload)}}\n`,
    ).join("")}`,
  },
  parts: PAYLOADS.map(parts),
  documents: PAYLOADS.map(document),
};

let shown: Shown;
let page: Page;
beforeAll(async () => {
  shown = await show({ files, rules, today: TODAY });
  page = await shown.page();
});
afterAll(() => shown?.close());

/** What an author may have brought in that has no place on any page; ours are known by where they stand. */
const STRANGE = `[
  ...document.querySelectorAll("script, style, link, meta, base, iframe, object, embed, form, input, textarea, video, audio, dialog, template, image, animate, set, use, foreignObject"),
].filter((each) =>
  !(each.matches("head > meta, head > link[rel=stylesheet][href$='style.css'], head > script[src$='search.js'], head > script[src$='search-index.js']")) &&
  !(each.matches("head > link[rel=stylesheet]") && each.href === location.href.replace(/\\.html.*$/, "/sheet.css")) &&
  !(each.closest("#Search")) && !(each.matches("svg use[href^='#']"))
).map((each) => each.outerHTML)
.concat([...document.querySelectorAll("*")].flatMap((each) =>
  [...each.attributes].filter(({ name, value }) => /^on/i.test(name) || name === "style" || name === "srcdoc" || name === "ping" || name === "formaction" || /^\\s*(javascript|vbscript|data):/i.test(value)).map(({ name, value }) => name + "=" + value)))`;

/** What is looked at on every page, asked for at once. */
const LOOK = `({
  title: document.querySelector("h1").textContent.trim(),
  hasRun: window.ran !== undefined,
  strange: ${STRANGE},
  protocols: [...document.querySelectorAll("a[href], area[href]")].map((each) => each.protocol),
  frame: [document.querySelectorAll("main#Main > .body").length, document.querySelectorAll("body > footer").length, document.querySelectorAll("[id=Main]").length],
})`;

interface Look {
  readonly title: string;
  readonly hasRun: boolean;
  readonly strange: readonly string[];
  readonly protocols: readonly string[];
  readonly frame: readonly number[];
}

/** Pages that are the same for every repository but for their head and foot: an ordinary run looks at some of them. */
const isOfProduct = (path: string): boolean => /^(?:rules|guide|reference)\/(?!house\.)/u.test(path);

/** The pages that are looked at: all in a deep run. */
function looked(): readonly string[] {
  const pages = shown.paths.filter((each) => each.endsWith(".html"));
  const product = pages.filter(isOfProduct);
  expect(product.length).toBeGreaterThan(50);
  expect(pages.filter((each) => each.startsWith("rules/house.")).length).toBe(PAYLOADS.length);
  return deep ? pages : [...pages.filter((each) => !isOfProduct(each)), ...some(product, 8, seed)];
}

describe("payloads in every field an author fills in", () => {
  it("are many", () => {
    expect(new Set(ALL).size).toBeGreaterThanOrEqual(60);
    expect(PAYLOADS.length).toBeGreaterThanOrEqual(12);
    expect(
      shown.paths.filter((path) => path.startsWith("builds/") && path.endsWith(".html")).length,
    ).toBeGreaterThanOrEqual(PAYLOADS.length);
  });

  it("stay words: nothing runs, nothing is asked for from elsewhere, no element of theirs is on a page", {
    timeout: 600_000,
  }, async () => {
    const wrong: string[] = [];
    const titles = new Set<string>();
    for (const path of looked()) {
      await page.goto(shown.fileUrl(path));
      const { title, hasRun, strange, protocols, frame } = (await page.evaluate(LOOK)) as Look;
      titles.add(title);
      if (hasRun) wrong.push(`${path} ran a script`);
      for (const each of strange) wrong.push(`${path} has ${each.slice(0, 200)}`);
      for (const protocol of protocols)
        if (!["file:", "http:", "https:", "mailto:"].includes(protocol))
          wrong.push(`${path} has a link of ${protocol}`);
      // The frame of the page is where it was: nothing has closed an element of ours.
      if (String(frame) !== "1,1,1") wrong.push(`${path} is broken: ${frame}`);
    }
    expect(wrong).toEqual([]);
    expect(shown.troubles).toEqual([]);
    // They are there, letter by letter: nothing was left out instead of being made harmless.
    const lost = PAYLOADS.filter((payload) => !titles.has(`${payload} title`.trim()));
    expect(lost).toEqual([]);
  });

  it("stay one string at the foot of printed pages, in a style sheet with nothing else of theirs", () => {
    // CSS Syntax Level 3, 4.3.7: a sign written by its number ends no string.
    const FOOT =
      /^@page \{ @bottom-left \{ content: (?:"(?:[A-Za-z0-9 .()-]|\\[0-9a-f]{1,6} ?)*" ?)+; font: (?:bold )?8pt sans-serif; (?:white-space: pre-line; width: 82%; )?\} \}\n/u;
    const LABELS =
      /^@media screen and \(max-width:42rem\)\{(?:\.[a-z]+ td:nth-of-type\(\d+\)::before\{content:"(?:[A-Za-z0-9 .()-]|\\[0-9a-f]{1,6} )*"\})+\}\n$/u;
    const styles = shown.paths.filter((path) => path.endsWith("/sheet.css"));
    expect(styles.length).toBeGreaterThanOrEqual(PAYLOADS.length);
    for (const path of styles) {
      const text = readFileSync(new URL(shown.fileUrl(path)), "utf8");
      expect(text).toMatch(FOOT);
      const rest = text.replace(FOOT, "");
      if (rest !== "") expect(rest).toMatch(LABELS);
    }
  });

  it("stay words among what the search finds", async () => {
    await page.goto(shown.fileUrl("search.html"));
    for (const words of WORDS) {
      await page.getByLabel("A rule, a build, a part, a lot or a key").fill(words);
      expect(await page.locator("#Found li").count()).toBeGreaterThan(deep ? 5 : 0);
      expect(await page.evaluate(`document.querySelectorAll("#Found :not(li, a, small)").length`)).toBe(0);
    }
    expect(await page.evaluate("window.ran")).toBeUndefined();
    expect(shown.troubles).toEqual([]);
  });

  it("stay words when a pointer goes over them and keys walk through them", async () => {
    await page.goto(shown.fileUrl(shown.paths.find((path) => path.startsWith("builds/")) ?? ""));
    for (let step = 0; step < 40; step += 1) await page.keyboard.press("Tab");
    for (let y = 100; y < 700; y += 40) await page.mouse.move(300, y);
    expect(await page.evaluate("window.ran")).toBeUndefined();
    expect(shown.troubles).toEqual([]);
  });
});
