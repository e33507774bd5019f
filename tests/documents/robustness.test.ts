import type { CheckEntry, DocumentEntry } from "@plumbmark/core";
import fc from "fast-check";
import { describe, expect, inject, test } from "vitest";
import { deep } from "../run/effort.js";
import { notEmpty } from "../run/not-empty.js";
import { some } from "../run/some.js";
import { changed, inspectText, inspectTexts, SMALL } from "./repository.js";

const fence = (yaml: string): string => `---\n${yaml}\n---\n\n# Body\n`;

/** What holds of every inspection, whatever was written: a place, a sentence, and what to do about it. */
function sane(document: DocumentEntry): DocumentEntry {
  const good = ({ at, says, mend, outcome }: CheckEntry): boolean =>
    at.line >= 1 &&
    at.column >= 1 &&
    at.endLine >= at.line &&
    says.trim() !== "" &&
    (outcome === "holds" || outcome === "waived" || (mend ?? "").trim() !== "");
  expect(document.checks.filter((check) => !good(check))).toEqual([]);
  return document;
}

const { seed } = inject("effort");

const read = (text: string): DocumentEntry => sane(inspectText(text));
/** Only what is wrong with the file is looked at in a quick run; in a deep one every rule is asked, as by `read`. */
const readFile = (text: string): DocumentEntry =>
  deep ? read(text) : sane(inspectText(text, { rules: ["document.front-matter", "document.parts"], turns: false }));
const only = (document: DocumentEntry, rule: string): readonly CheckEntry[] =>
  document.checks.filter((check) => check.rule === rule && check.outcome === "fails");
const mistakes = (document: DocumentEntry): readonly CheckEntry[] => [
  ...only(document, "document.front-matter"),
  ...only(document, "document.parts"),
];

/** Line and column, from 1, of the one place where `what` stands. */
function placeOf(text: string, what: string): { line: number; column: number } {
  const at = text.indexOf(what);
  if (at < 0 || text.indexOf(what, at + 1) >= 0) throw new Error(`${what} does not stand in exactly one place`);
  const before = text.slice(0, at).split("\n");
  return { line: before.length, column: (before.at(-1) as string).length + 1 };
}

test("the small build meets every requirement: nothing fails, nothing is open", () => {
  const document = read(SMALL);
  expect(document.checks.filter(({ level, outcome }) => level === "shall" && outcome !== "holds")).toEqual([]);
  expect(document.checks.length).toBeGreaterThan(20);
  expect(document.verdict).toBe("ready");
});

/** A reader that goes down by calling itself would run out of stack in some 10,000 calls, a few of them for each list. */
const DEEPEST = deep ? 25_000 : 6_000;

describe("a front matter that cannot be read", () => {
  test.each([
    ["an unclosed list", "build: a\nfaces: [1, 2"],
    ["an unclosed quotation", 'build: "a'],
    ["wrong indentation", "build: a\n  title: b\n status: draft"],
    ["a tab", "build: a\nfaces:\n\tx: 1"],
    ["a key twice", "build: a\nbuild: b\ntitle: c\nstatus: draft"],
    ["an alias", "build: &a x\ntitle: *a\nstatus: draft"],
    ["an alias of nothing", "build: x\ntitle: *nothing\nstatus: draft"],
    ["an alias of itself", "build: x\ntitle: t\nstatus: draft\nfaces: &f {a: *f}"],
    ["a merge key", "build: x\ntitle: t\nstatus: draft\nlight: &l {target: 400 nit}\naudience: {<<: *l}"],
    ["a tag nobody knows", "build: !secret x\ntitle: !!binary aGk=\nstatus: draft"],
    ["two documents", "build: x\n...\nbuild: y"],
    ["a list", "- build\n- title"],
    ["a number", "7"],
    ["a text", "only a sentence"],
    ["nothing", ""],
    ["null", "null"],
    ["a comment", "# nothing yet"],
    ["deep lists", `build: x\ntitle: t\nstatus: draft\nfaces: ${"[".repeat(200)}${"]".repeat(200)}`],
    ["very deep lists", `build: ${"[".repeat(DEEPEST)}${"]".repeat(DEEPEST)}`],
    ["very deep groups", `build: ${"{a: ".repeat(DEEPEST)}1${"}".repeat(DEEPEST)}`],
    ["deep lists never closed", `build: ${"[".repeat(2 * DEEPEST)}`],
    ["control characters", "build: \u0000\u0001\u0008"],
    ["half a character", "build: \ud800\ntitle: \udfff"],
  ])("%s", (_, yaml) => {
    const document = readFile(fence(yaml));
    expect(document.verdict).toBe("not ready");
    expect(mistakes(document).length).toBeGreaterThan(0);
  });

  test.each([
    ["an empty file", ""],
    ["blank lines", "\n\n  \n"],
    ["no front matter", "# Only a heading\n"],
    ["front matter that is not closed", "---\nbuild: x\ntitle: y\nstatus: draft\n"],
    ["a fence alone", "---"],
    ["two fences", "---\n---"],
    ["a byte-order mark alone", "\ufeff"],
  ])("%s", (_, text) => {
    const document = readFile(text);
    expect(document.verdict).toBe("not ready");
    expect(mistakes(document).length).toBeGreaterThan(0);
  });

  test("a million characters and more are not read", () => {
    const document = readFile(fence(`build: x\ntitle: ${"long ".repeat(250_000)}\nstatus: draft`));
    expect(document.verdict).toBe("not ready");
    expect(only(document, "document.front-matter")[0]?.says).toMatch(/characters long/u);
  });

  test("a draft that cannot be read is not ready either", () => {
    expect(
      read(changed("status: for-build", "status: draft\nfaces: {").replace("---\nbuild", "---\nbuild")).verdict,
    ).toBe("not ready");
  });
});

describe("a document of only front matter", () => {
  test("is read, and its missing sections fail", () => {
    const text = SMALL.slice(0, SMALL.indexOf("\n---\n") + 4);
    const document = read(text);
    expect(mistakes(document)).toEqual([]);
    expect(only(document, "document.sections")).toHaveLength(6);
    expect(document.verdict).toBe("not ready");
  });
});

describe("what the author is told", () => {
  const nearestWord: readonly [string, string, string, string][] = [
    ["    colums: 4", "    columns: 4", "colums", "columns"],
    ["  circiuts:", "  circuits:", "circiuts", "circuits"],
    ["      braker: 20 A", "      breaker: 20 A", "braker", "breaker"],
    ["statsu: for-build", "status: for-build", "statsu", "status"],
    ["      lenght: 8 ft", "      length: 8 ft", "lenght", "length"],
  ];
  test.each(nearestWord)("%s names the nearest key, at the key", (to, from, wrong, right) => {
    const text = changed(from, to);
    const check = only(readFile(text), "document.front-matter").find(({ says }) => says.includes(`\`${wrong}\``));
    expect(check?.mend).toContain(`Write \`${right}\`.`);
    expect(check?.at).toMatchObject(placeOf(text, `${wrong}:`));
  });

  test("a misspelt word names the nearest one it may be", () => {
    const text = changed("support: flown", "support: flwon");
    const [check] = only(readFile(text), "document.front-matter");
    expect(check?.mend).toContain("Write `flown`.");
    expect(check?.at).toMatchObject(placeOf(text, "flwon"));
  });

  test.each([
    ["breaker: 20 A", "breaker: 20", "power.circuits.c1.breaker", /\bA\b/u],
    ["trim: 11 ft", "trim: 11", "faces.header.trim", /\b(ft|m)\b/u],
    ["rate: 60 Hz", "rate: 60", "picture.rate", /\bHz\b/u],
    ["supply: 120 V", "supply: 120", "power.circuits.c1.supply", /\bV\b/u],
  ])("%s without its unit names the units it could have", (from, to, path, unit) => {
    const text = changed(from, to);
    const document = readFile(text);
    const check = only(document, "document.front-matter").find(({ at }) => at.path === path);
    expect(check?.mend).toMatch(unit);
    const key = placeOf(text, to);
    expect(check?.at).toMatchObject({ line: key.line, column: key.column + to.indexOf(": ") + 2 });
    expect(document.verdict).toBe("not ready");
  });

  test.each([
    ["power where a current belongs", "breaker: 20 A", "breaker: 20 W"],
    ["an unknown unit", "breaker: 20 A", "breaker: 20 bananas"],
    ["mass where a length belongs", "trim: 11 ft", "trim: 11 lb"],
    ["lux where a luminance belongs", "target: 400 cd/m2", "target: 400 lx"],
  ])("%s is refused", (_, from, to) => {
    const document = readFile(changed(from, to));
    expect(only(document, "document.front-matter").length).toBeGreaterThan(0);
    expect(document.verdict).toBe("not ready");
  });

  test.each([
    ["panel: tile-500-p3.1", "panel: tile-500-p2.8", "tile-500-p3.1"],
    ["part: processor-6", "part: procesor-4", "processor-6"],
    ["part: cord-12-3,", "part: cord-12-2,", "cord-12-3"],
  ])("a part that is not in the catalogue: %s", (from, to, near) => {
    const text = changed(from, to);
    const document = readFile(text);
    const [check] = only(document, "document.parts");
    expect(check?.mend).toContain(`Write \`${near}\`.`);
    const at = placeOf(text, to);
    expect(check?.at).toMatchObject({ line: at.line, column: at.column + to.indexOf(": ") + 2 });
    expect(document.verdict).toBe("not ready");
  });

  test("a part of another kind is refused by its kind", () => {
    const [check] = only(readFile(changed("panel: tile-500-p3.1", "panel: shackle-3-8")), "document.parts");
    expect(check?.says).toContain("hardware");
  });

  test.each([
    ["a face that is not there", "panels: header A1..A4\ndata", "panels: hedder A1..A4\ndata"],
    ["a cell the face does not have", "panels: header A1..A4\ndata", "panels: header A1..A5\ndata"],
    ["a slanting range", "panels: header A1..A4\ndata", "panels: header A1..B4\ndata"],
    ["a circuit that is not there", "from: c1", "from: c2"],
  ])("%s", (_, from, to) => {
    const document = readFile(changed(from, to));
    expect(only(document, "document.parts").length).toBeGreaterThan(0);
    expect(document.verdict).toBe("not ready");
  });

  test("a misspelt key in a file with carriage returns and a byte-order mark keeps its line", () => {
    const text = changed("    columns: 4", "    colums: 4");
    const { line } = placeOf(text, "colums:");
    const carriage = only(readFile(text.replaceAll("\n", "\r\n")), "document.front-matter").find(({ says }) =>
      says.includes("colums"),
    );
    expect(carriage?.at).toMatchObject({ line, column: 5 });
    const marked = only(readFile(`\ufeff${text}`), "document.front-matter").find(({ says }) => says.includes("colums"));
    expect(marked?.at).toMatchObject({ line, column: 5 });
  });

  test("broken YAML is told at its line", () => {
    const text = changed("  rate: 60 Hz", "  rate: [60 Hz");
    const [check] = only(readFile(text), "document.front-matter");
    expect(check?.at.line).toBeGreaterThanOrEqual(placeOf(text, "rate: [60 Hz").line);
    expect(check?.at.line).toBeLessThanOrEqual(placeOf(text, "rigging:").line);
  });
});

describe("keys that mean something to JavaScript", () => {
  test.each(["__proto__", "constructor", "prototype", "toString", "hasOwnProperty", "length", "then", "valueOf"])(
    "%s",
    (key) => {
      const ways = [
        `${key}: {polluted: true}`,
        `faces:\n  ${key}: {${key}: 1}`,
        `faces:\n  ${key}: {panel: ${key}, columns: 1, rows: 1, support: flown, extras: {${key}: 2}, lot: ${key}}`,
        `power: {circuits: {${key}: {supply: ${key}, ${key}: 3}}, runs: {${key}: {from: ${key}, panels: ${key} A1}}}`,
        `rigging: {bars: {${key}: {section: ${key}, hangs: {${key}: {at: 1 m, assembly: [${key}]}}}}}`,
      ];
      for (const yaml of notEmpty(deep ? ways : some(ways, 1, seed + key.length)))
        expect(read(fence(`build: x\ntitle: t\nstatus: for-build\n${yaml}`)).verdict).toBe("not ready");
      expect(({} as Record<string, unknown>).polluted).toBeUndefined();
    },
  );
});

/** Values that belong nowhere, put everywhere. */
const WRONG: readonly string[] = [
  "null",
  "7",
  "-1",
  "0",
  ".inf",
  ".nan",
  "1e300",
  "true",
  "text",
  "[]",
  "[null]",
  "[[1]]",
  "{}",
  "{a: null}",
  "{a: {b: [1]}}",
  '""',
  "2027-01-01",
  "0x10",
];

/** Every leaf and every group of the small build's front matter with the value standing there replaced. */
function replacedValues(value: string): readonly { readonly path: string; readonly text: string }[] {
  const end = SMALL.indexOf("\n---\n");
  const lines = SMALL.slice(0, end).split("\n");
  const indentOf = (line: string): number => line.search(/\S/u);
  return lines.flatMap((line, index) => {
    const match = /^(\s*)([\w.-]+):/u.exec(line);
    if (!match || index === 0) return [];
    let next = index + 1;
    while (next < lines.length && indentOf(lines[next] as string) > indentOf(line)) next += 1;
    const yaml = [...lines.slice(0, index), `${match[1]}${match[2]}: ${value}`, ...lines.slice(next)].join("\n");
    return [{ path: `line ${index + 1} ${match[2]}`, text: yaml + SMALL.slice(end) }];
  });
}

/** Every value comes to every place in a deep run; in others each comes to one, another in each run. */
const PLACES = deep ? Number.POSITIVE_INFINITY : 1;

describe("wrong types", () => {
  test.each(WRONG.map((value, at) => [value, at] as const))("%s in place of every value never throws", (value, at) => {
    const all = replacedValues(value);
    expect(all.length).toBeGreaterThan(40);
    const replaced = some(all, PLACES, seed + at);
    expect(replaced.length).toBeGreaterThan(0);
    for (const document of inspectTexts(replaced.map(({ text }) => text)).documents) sane(document);
  });

  test.each([
    ["faces: a list", "faces:", "faces: [1, 2]\nfaces-were:"],
    ["panels: a number", "panels: header A1..A4\ndata", "panels: 7\ndata"],
    ["columns: more than any wall has", "columns: 4", "columns: 1000000000"],
    ["columns: infinitely many", "columns: 4", "columns: .inf"],
    ["columns: a part of one", "columns: 4", "columns: 3.5"],
    ["columns: fewer than none", "columns: 4", "columns: -4"],
    ["revision: a part of one", "revision: 1", "revision: 1.5"],
    ["omit: a text", "    rows: 1", "    rows: 1\n    omit: A1"],
    ["omit: groups", "    rows: 1", "    rows: 1\n    omit: [{a: 1}, null]"],
    ["extras: a group for a count", "    rows: 1", "    rows: 1\n    extras: {hanging-bar-500: {n: 1}}"],
    [
      "assembly: a number",
      "assembly: [beam-clamp, wire-rope-1-4, pipe-collar], structure: 500 lb}\n        H2",
      "assembly: 7, structure: 500 lb}\n        H2",
    ],
    [
      "assembly: nothing in a list",
      "assembly: [beam-clamp, wire-rope-1-4, pipe-collar], structure: 500 lb}\n        H2",
      "assembly: [null, {part: {}}], structure: 500 lb}\n        H2",
    ],
    ["waivers: a group", "practice: us", "practice: us\nwaivers: {rule: power.circuit-load}"],
    [
      "waivers: where is a group",
      "practice: us",
      "practice: us\nwaivers: [{rule: power.circuit-load, where: {a: 1}, because: b, by: c, until: 2027-01-01}]",
    ],
  ])("%s is refused by name", (_, from, to) => {
    const document = readFile(changed(from, to));
    expect(only(document, "document.front-matter").length).toBeGreaterThan(0);
    expect(document.verdict).toBe("not ready");
  });

  test("a wall larger than any crew hangs is inspected in reasonable time", () => {
    const document = read(
      changed("columns: 4\n    rows: 1", "columns: 100\n    rows: 20").replaceAll(
        "header A1..A4",
        "header A1..A100, B100..B1",
      ),
    );
    expect(document.verdict).toBe("not ready");
  }, 30_000);
});

describe("anything at all", () => {
  const keys = [
    "build",
    "title",
    "status",
    "faces",
    "panel",
    "columns",
    "rows",
    "omit",
    "extras",
    "lot",
    "support",
    "power",
    "circuits",
    "runs",
    "supply",
    "breaker",
    "from",
    "feed",
    "jumper",
    "part",
    "length",
    "panels",
    "data",
    "processor",
    "chains",
    "picture",
    "raster",
    "rate",
    "rigging",
    "bars",
    "section",
    "carries",
    "face",
    "hangs",
    "at",
    "assembly",
    "structure",
    "waivers",
    "rule",
    "until",
    "__proto__",
    "1",
    "a.b",
    "",
    "é",
  ];
  const words = [
    "tile-500-p3.1",
    "header",
    "header A1..A9",
    "20 A",
    "120 V",
    "11 ft",
    "flown",
    "draft",
    "for-build",
    "2027-01-01",
    "1920 x 1080",
    "A1",
    "",
    " ",
    "*",
    "- x",
  ];
  const { tree } = fc.letrec((tie) => ({
    tree: fc.oneof({ depthSize: "medium", withCrossShrink: true }, tie("leaf"), tie("group"), tie("list")),
    leaf: fc.oneof(
      fc.constantFrom<unknown>(...words, null, true, 0, 1, -1, 1e9),
      fc.string(),
      fc.double(),
      fc.integer(),
    ),
    group: fc.dictionary(fc.constantFrom(...keys), tie("tree"), { maxKeys: 6, noNullPrototype: true }),
    list: fc.array(tie("tree"), { maxLength: 4 }),
  }));
  /** Each case is a whole inspection. */
  const SOME = { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 20) };
  const nameless = fc.constantFrom("faces", "power", "data", "picture", "rigging", "waivers", "audience", "light");

  test("random front matter, well formed and wrong, never throws", () => {
    fc.assert(
      fc.property(fc.dictionary(nameless, tree, { maxKeys: 6 }), (data) => {
        // JSON is YAML 1.2, so that what is random is what is written and not how.
        read(fence(JSON.stringify({ build: "x", title: "t", status: "for-build", ...data })));
      }),
      SOME,
    );
  });

  test("random text where YAML belongs never throws and is never ready", () => {
    const bits = fc.constantFrom(
      "---\n",
      "\n",
      ": ",
      "build",
      "faces",
      "- ",
      "[",
      "]",
      "{",
      "}",
      "&a ",
      "*a",
      "|",
      ">",
      '"',
      "'",
      "#",
      "  ",
      "\t",
      "!!str ",
      "? ",
      "<<",
      "\r\n",
      "\ufeff",
      "\u2028",
      "😀",
      "é",
    );
    fc.assert(
      fc.property(fc.array(fc.oneof(bits, fc.string()), { maxLength: 40 }), (pieces) => {
        expect(read(fence(pieces.join(""))).verdict).toBe("not ready");
      }),
      SOME,
    );
  });

  test("the small build with random characters put in anywhere never throws", () => {
    fc.assert(
      fc.property(
        fc.nat(SMALL.length),
        fc.nat(30),
        fc.oneof(fc.string({ maxLength: 8 }), fc.constantFrom("\n", "---", "[", "{", ": ", "\t", "&x ", "*x")),
        (at, gone, put) => {
          read(SMALL.slice(0, at) + put + SMALL.slice(at + gone));
        },
      ),
      SOME,
    );
  });

  test("random bodies never throw", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.oneof(
            fc.string(),
            fc.constantFrom(
              "# ",
              "## Scope\n",
              "\n",
              "> ",
              "- [ ] ",
              "[6](calc:faces.header.mass)",
              "[x](calc:)",
              "```\n",
              "| a | b |\n|--|--|\n",
              "<div>",
              "[^1]",
              "![](x)",
            ),
          ),
          { maxLength: 30 },
        ),
        (pieces) => {
          read(SMALL.slice(0, SMALL.indexOf("\n---\n") + 5) + pieces.join(""));
        },
      ),
      SOME,
    );
  });
});
