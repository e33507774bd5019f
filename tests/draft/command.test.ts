import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { schemas } from "@plumbmark/core";
import { starterRepository } from "@plumbmark/starter";
import Ajv2020 from "ajv/dist/2020.js";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { draftCommand } from "../../packages/cli/src/commands/draft.js";
import { Trouble } from "../../packages/cli/src/terminal/trouble.js";
import { copyStarter } from "../starter.js";

let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "plumbmark-draft-"));
  copyStarter(folder);
  cpSync(join(starterRepository, "wishes"), join(folder, "wishes"), { recursive: true });
  const short = shortened(readFileSync(join(folder, "wishes/spring-banner.yaml"), "utf8"));
  expect(short).toMatch(/wish: short-banner[\s\S]*shows: colour[\s\S]*at most 4 ft[\s\S]*panel: tile/u);
  writeFileSync(join(folder, SHORT), short);
});

afterAll(() => rmSync(folder, { recursive: true }));

async function run(wishes: readonly string[], options: Partial<Parameters<typeof draftCommand>[1]> = {}) {
  let printed = "";
  const context = {
    folder,
    today: "2026-12-01",
    width: 110,
    colour: 0 as const,
    print: (text: string) => {
      printed += text;
    },
    warn: () => undefined,
  };
  const status = await draftCommand(wishes, { as: "text", ...options }, context);
  return { status, printed };
}

/** A rule of a house whose cases take one panel a row. */
const NARROW = `import { is, plugin, rule } from "KIT";
export default plugin({ kit: 1, rules: [rule({
  id: "house.narrow",
  states: "A face has one column.",
  level: "shall",
  why: "Cases are of one.",
  judged: "The columns of every face.",
  sources: ["house"],
  *checks({ build }) {
    for (const face of build.faces) {
      const columns = new Set(face.cells.map(({ column }) => column)).size;
      yield is(face, { holds: columns < 2, says: columns < 2 ? "It goes into our cases." : "Two columns are too many for our cases.", mend: "Take one." });
    }
  },
})] });
`;

const STRIP = "wishes/summer-strip.yaml";
/** The banner of spring, of two panels at most: each face that is laid out takes its time. */
const SHORT = "wishes/short-banner.yaml";
const shortened = (text: string): string =>
  text
    .replace("wish: spring-banner", "wish: short-banner")
    .replace(/shows: .*/u, "shows: colour")
    .replace("at most 10 ft", "at most 4 ft")
    .replace("out-of: holdings", "out-of: lot-2431\npanel: tile-500-p3.1");

/** The file changed while something is asked, and as it was after that. */
async function changing<T>(path: string, change: (text: string) => string, ask: () => Promise<T>): Promise<T> {
  const before = readFileSync(join(folder, path), "utf8");
  const after = change(before);
  expect(after).not.toBe(before);
  writeFileSync(join(folder, path), after);
  try {
    return await ask();
  } finally {
    writeFileSync(join(folder, path), before);
  }
}

/** Asks with the rule of the house in force. */
async function narrowed<T>(ask: () => Promise<T>): Promise<T> {
  // What `npm install` would put beside the documents.
  const kit = new URL("../../packages/kit/dist/index.js", import.meta.url).href;
  writeFileSync(join(folder, "narrow.mjs"), NARROW.replace("KIT", kit));
  try {
    return await changing("house-standard.yaml", (text) => `rules-from: ["./narrow.mjs"]\n${text}`, ask);
  } finally {
    rmSync(join(folder, "narrow.mjs"));
  }
}

const described = new Ajv2020.default({ strict: false }).compile(schemas.draftSchema);

const { deep, seed } = inject("effort");
/** Each asks a process of its own: a quick run asks about one wish or about several at a time, a deep one both. */
const isAsked = (way: number): boolean => deep || seed % 2 === way;

describe("plumbmark draft", () => {
  test("prints options, and writes the one that is chosen, once", async () => {
    const { status, printed } = await run([STRIP]);
    expect(status).toBe(0);
    expect(printed).toMatch(/Option 1: Nearest to what was asked for/u);
    await run([STRIP], { option: "1", to: "builds/strip.md" });
    const text = readFileSync(join(folder, "builds/strip.md"), "utf8");
    expect(text).toMatch(/^---\nbuild: strip\n[\s\S]*\nstatus: draft\nvenue: marlow-quay-hall\n/u);
    await expect(run([STRIP], { option: "1", to: "builds/strip.md" })).rejects.toThrow(/is there already/u);
    await run([STRIP], { option: "2", to: "builds/strip.md", replace: true });
    expect(readFileSync(join(folder, "builds/strip.md"), "utf8")).not.toBe(text);
    rmSync(join(folder, "builds/strip.md"));
  });

  test.each([
    ["one wish", [STRIP], {}],
    ["one without options", [STRIP], { within: "0.001 s" }],
    ["several", [STRIP, SHORT], { within: "20 s" }],
    ["a build that stands", [], { like: "builds/small-screen.md", width: "4 ft" }],
  ])("prints JSON as its schema describes it: %s", async (_, wishes, options) => {
    const { printed } = await run(wishes, { as: "json", ...options });
    const follows = described(JSON.parse(printed));
    expect(described.errors ?? []).toEqual([]);
    expect(follows).toBe(true);
    const less = JSON.parse(printed) as { options?: unknown } | readonly unknown[];
    if (!Array.isArray(less)) expect(described({ ...less, options: undefined, more: 1 })).toBe(false);
  });

  test.runIf(isAsked(0))(
    "an option that fails a requirement of the house's own rules falls out with what they say",
    async () => {
      const { printed } = await narrowed(() => run([SHORT], { as: "json" }));
      const record = JSON.parse(printed) as {
        readonly options: readonly { readonly columns: number; readonly number: number }[];
        readonly "fell-out": readonly { readonly columns: number; readonly rule: string; readonly says: string }[];
      };
      expect(record["fell-out"]).toContainEqual(
        expect.objectContaining({ columns: 2, rule: "house.narrow", says: "Two columns are too many for our cases." }),
      );
      expect(record.options.length).toBeGreaterThan(0);
      for (const { columns } of record.options) expect(columns).not.toBe(2);
      expect(record.options.map(({ number }) => number)).toEqual(record.options.map((_, index) => index + 1));
    },
  );

  test.runIf(isAsked(1))("several wishes as one purchase are judged by the house's own rules, too", async () => {
    const { printed } = await narrowed(() => run([STRIP, SHORT], { as: "json", together: true }));
    const { wishes } = JSON.parse(printed) as {
      readonly wishes: readonly { readonly "fell-out": readonly unknown[] }[];
    };
    expect(wishes.flatMap((each) => each["fell-out"])).toContainEqual(
      expect.objectContaining({ columns: 2, rule: "house.narrow" }),
    );
  });

  test("gives status 1 where nothing on offer meets the wish, and says what can be made", async () => {
    const text = readFileSync(join(folder, STRIP), "utf8").replace(/height: [^}]+/u, "height: exactly 3 ft");
    writeFileSync(join(folder, "wishes/odd.yaml"), text);
    // Of a lot of 40 every face is tried that could be made; of four it is looked for in the same way.
    const { status, printed } = await changing(
      "stock.yaml",
      (stock) => stock.replace(/(lot-2431: .*count: )40/u, "$14"),
      () => run(["wishes/odd.yaml"]),
    );
    expect(status).toBe(1);
    expect(printed).toMatch(/The nearest that can be made is 1 ft 7-3\/4 in × 3 ft 3-1\/4 in/u);
    rmSync(join(folder, "wishes/odd.yaml"));
  });

  test("lays out a build that stands in another size, in its place and under its names, without prose and waivers", async () => {
    const { status, printed } = await run([], {
      like: "builds/over-stage-banner.md",
      width: "exactly 2 m",
      option: "1",
      to: "builds/short.md",
    });
    expect(status).toBe(0);
    expect(printed).toMatch(/faces\.banner\.columns: 6 → 4/u);
    const text = readFileSync(join(folder, "builds/short.md"), "utf8");
    rmSync(join(folder, "builds/short.md"));
    expect(text).toMatch(/^build: short$/mu);
    expect(text).toMatch(/^ {2}banner:$/mu);
    expect(text).toMatch(/panels: banner [A-D]\d\.\.[A-D]\d/u);
    expect(text).toMatch(/carries: \{face: banner, /u);
    expect(text).toMatch(/\(calc:faces\.banner\.width\)/u);
    expect(text).not.toMatch(/\bdisplay\b/u);
    expect(text).not.toMatch(/the piece, and the name of whoever is speaking|approved/u);
    // Bar and hangs, and what the letter says of each, go by one name.
    expect(text).toMatch(/^ {4}header:$/mu);
    const [, points = ""] = /points:\n((?: {6}H\d.*\n)+)|points: \{(.*)\}/u.exec(text)?.filter(Boolean) ?? [];
    expect(points).toMatch(/\bH1: \{/u);
  });

  test("lays out one face of a build that has several, and says which are not in it", async () => {
    const like = "builds/riser-fascias.md";
    await expect(run([], { like, width: "9 ft" })).rejects.toThrow(/2 faces, low, high/u);
    await expect(run([], { like, width: "9 ft", face: "hgh" })).rejects.toMatchObject({
      mend: expect.stringContaining("`high`"),
    });
    const { printed } = await run([], { like, width: "9 ft", face: "high" });
    expect(printed).toMatch(/faces\.high\.columns: 6 → 5/u);
    expect(printed).toMatch(/Other faces of the build are not in it: low/u);
    expect(printed).not.toMatch(/faces\.low/u);
    expect(existsSync(join(folder, "builds/riser-fascias-again.md"))).toBe(false);
  });

  test("refuses what is asked of a build where none is named", async () => {
    await expect(run([STRIP], { width: "7 ft" })).rejects.toThrow(/`--width` is asked of a build/u);
  });

  test("a search that is ended says what it was at and what it had not come to", async () => {
    const { printed, status } = await run([STRIP], { within: "0.001 s" });
    expect(status).toBe(1);
    expect(printed).toMatch(/Not looked at/u);
  });

  test("asks for what it needs", async () => {
    await expect(run([STRIP], { option: "1" })).rejects.toThrow(Trouble);
    await expect(run([STRIP], { option: "first", to: "builds/a.md" })).rejects.toThrow(/number of no option/u);
    await expect(run([STRIP], { option: "1", to: "../a.md" })).rejects.toThrow(/outside/u);
    await expect(run(["wishes/none.yaml"])).rejects.toThrow(/cannot be read/u);
  });
});
