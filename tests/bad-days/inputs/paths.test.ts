import fs from "node:fs";
import promises from "node:fs/promises";
import { syncBuiltinESMExports } from "node:module";
import { join } from "node:path";
import type { InspectionRecord } from "@plumbmark/core";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { plumbmark, type Told } from "../../plumbmark.js";
import { notEmpty } from "../../run/not-empty.js";
import { some } from "../../run/some.js";
import { HOSTILE, held, SECRET, withOutside } from "./hostile-paths.js";

// Every field that is a path or becomes one, with every way of leading out of the docs repository: nothing outside is
// opened or written, nothing of it comes out, and what is wrong is told with file, line and column.

/** An ordinary run tries some of what is many, others each time; a deep run all. */
const { deep, seed } = inject("effort");
const few = <T>(all: readonly T[], count: number, more = 0): readonly T[] =>
  notEmpty(deep ? all : some(all, count, seed + more));

/** Paths that were opened or listed, every link followed. */
const opened = new Set<string>();

const NAMES = ["open", "opendir", "readdir", "readFile", "openSync", "readdirSync", "readFileSync", "copyFileSync"];

/** Has a module of Node.js note what it opens, for whoever imports it too; gives back how to end that. */
function note(module: object): () => void {
  const methods = module as Record<string, unknown>;
  const before = NAMES.flatMap((name) => (typeof methods[name] === "function" ? [[name, methods[name]] as const] : []));
  for (const [name, work] of before)
    methods[name] = (path: unknown, ...rest: unknown[]) => {
      if (typeof path === "string") seen(path);
      return (work as (...all: unknown[]) => unknown)(path, ...rest);
    };
  syncBuiltinESMExports();
  return () => {
    Object.assign(module, Object.fromEntries(before));
    syncBuiltinESMExports();
  };
}

let ends: readonly (() => void)[] = [];
beforeAll(() => {
  ends = [fs, promises].map(note);
  expect(ends).toHaveLength(2);
});
afterAll(() => {
  for (const end of ends) end();
});

function seen(path: string): void {
  try {
    opened.add(real(path));
  } catch {
    // What is not there is not opened.
  }
}
const real = process.getBuiltinModule("node:fs").realpathSync.native;

/** Carries a command out in the docs repository: nothing beside it is opened, changed or told. */
async function unharmed(top: string, ...words: readonly string[]): Promise<Told> {
  const was = held(join(top, "out"));
  opened.clear();
  const told = await plumbmark(join(top, "docs"), words);
  const astray = [...opened].filter((path) => path.startsWith(`${top}/out`));
  expect(astray).toEqual([]);
  expect(held(join(top, "out"))).toEqual(was);
  expect(fs.readdirSync(top).filter((name) => !["docs", "out", "site"].includes(name))).toEqual([]);
  expect(told.out + told.err).not.toContain(SECRET);
  expect(told.err).not.toMatch(/mistake in Plumbmark|\n {4}at |[^\P{Cc}\n]|[\u202a-\u202e]/u);
  return told;
}

test("what is opened is seen", async () => {
  const top = withOutside();
  opened.clear();
  await plumbmark(join(top, "docs"), ["inspect", "--standard", "linked-f.yaml"]);
  expect(opened).toContain(join(top, "out/f.yaml"));
});

const line = (text: string): string => JSON.stringify(text);

describe("a house standard", () => {
  const FIELDS = {
    stock: { of: (value: string) => `stock: ${value}\n`, at: [4, 8], file: "f.yaml" },
    parts: { of: (value: string) => `parts:\n  - parts/*.yaml\n  - ${value}\n`, at: [6, 5], file: "f.yaml" },
    documents: { of: (value: string) => `documents:\n  - builds/*.md\n  - ${value}\n`, at: [5, 5], file: "f.md" },
    replaces: { of: (value: string) => `in-force: 2099-01-01\nreplaces: ${value}\n`, at: [5, 11], file: "f.yaml" },
  } as const;
  type Field = keyof typeof FIELDS;
  const fields = Object.keys(FIELDS) as Field[];
  const cases = fields.flatMap((field) => HOSTILE.map((hostile) => ({ field, ...hostile })));
  // Each way out in one of the fields, in another each run; all in all of them in a deep one.
  const tried = cases.filter(
    ({ field }, index) => deep || ((index % HOSTILE.length) + seed) % fields.length === fields.indexOf(field),
  );

  test("every way out is tried", () => expect(new Set(tried.map(({ name }) => name)).size).toBe(HOSTILE.length));

  test.each(tried)("`$field` that is $name", async ({ field, of, quiet, name }) => {
    const { of: text, at, file } = FIELDS[field];
    const top = withOutside();
    const value = of(top, file);
    fs.writeFileSync(
      join(top, "docs/house-standard.yaml"),
      `house-standard: House\nsections: []\n${field === "documents" ? "" : "documents: [builds/*.md]\n"}${text(line(value))}`,
    );
    const told = await unharmed(top, "inspect", "--as", "json", "--no-cache");
    const isPattern = field === "parts" || field === "documents";
    const entries = told.out === "" ? [] : (JSON.parse(told.out) as InspectionRecord).documents;
    const failing = entries.filter(({ verdict }) => verdict === "not ready");
    if (isPattern && quiet) {
      // A pattern like any other: it matches nothing.
      expect(told.err).toMatch(
        /^plumbmark: house-standard\.yaml:\d+:\d+: No file matches `[^\n]{1,110}`, one of its `\w+`\.\n$/u,
      );
      expect(told.err).toContain(`house-standard.yaml:${at.join(":")}:`);
      return void expect(failing).toEqual([]);
    }
    expect(told.status, told.err).toBeGreaterThan(0);
    // What is in the repository is told by its own name; what is not, where it is named.
    const own = /^by a link/u.test(name) && field !== "replaces";
    const places = [
      ...[...told.err.matchAll(/line (\d+), column (\d+)|\.yaml:(\d+):(\d+)/gu)].map((found) =>
        found.slice(1).filter(Boolean).map(Number),
      ),
      ...failing.flatMap((each) =>
        each.checks.map((check) => (each.file === "house-standard.yaml" ? [check.at.line, check.at.column] : [])),
      ),
    ];
    if (own) expect(failing.map((each) => each.file)).toEqual([expect.stringMatching(/^link/u)]);
    else expect(places, told.err + told.out).toContainEqual([...at]);
    const says =
      told.err + failing.flatMap((each) => each.checks.map((check) => `${check.says} ${check.mend}`)).join("\n");
    expect(says.length).toBeLessThan(1000);
    expect(says).toMatch(/Write a path|Put the file|Name a file|Check its name|shorter name|Write something/u);
  });
});

describe("a document", () => {
  const shown = async (body: string, more: Readonly<Record<string, string>> = {}) => {
    const top = withOutside({
      "builds/a.md": `---\nbuild: a\ntitle: A\nstatus: draft\n---\n\n# A\n\n${body}\n`,
      ...more,
    });
    const told = await unharmed(top, "publish", "--to", "../site");
    expect(told.status, told.err).toBe(0);
    const site = held(join(top, "site"));
    for (const [path, content] of Object.entries(site)) expect(content.includes(SECRET), path).toBe(false);
    return { ...told, site };
  };
  /** CommonMark 0.31, 6.3: whatever stands between angle brackets is where a link leads, but no line end and no bracket. */
  const linked = HOSTILE.filter(({ of }) => of("", "").length < 1000 && !of("", "").includes("\0"));

  test("shows no picture from outside, and tells where each stands", async () => {
    const top = "/nowhere";
    const paths = linked.map(({ of }) => of(top, "f.png"));
    const { err, site } = await shown(
      paths.map((path) => `![the truss](<${path}>)\n\n![up](<../${path}>)`).join("\n\n"),
    );
    const page = site["builds/a.html"] as string;
    expect(page.match(/\[the truss\]/gu)?.length).toBe(paths.length);
    expect(page).not.toContain("<img");
    const lines = err.trim().split("\n");
    for (const told of lines)
      expect(told).toMatch(/^plumbmark: builds\/a\.md:\d+:1: the picture (?:.* )?is not shown: /u);
    expect(new Set(lines.map((told) => /:(\d+):/u.exec(told)?.[1])).size).toBe(2 * paths.length);
  });

  test("has no link that leads out of the site", async () => {
    const paths = linked.flatMap(({ of }) => [
      of("/nowhere", "f.md"),
      `calc:drawings.${of("/nowhere", "f.md")}`,
      `calc:schedules.${of("/nowhere", "f.md")}`,
    ]);
    const { site } = await shown(paths.map((path) => `[there](<${path}>)`).join("\n\n"));
    const hrefs = [...(site["builds/a.html"] as string).matchAll(/href="([^"]*)"/gu)].map(([, href = ""]) => href);
    expect(hrefs.length).toBeGreaterThan(10);
    // An address of another host is a link like any other, and is never asked for.
    for (const href of hrefs.filter((each) => each !== "https://example.org/f.md"))
      expect(href).toMatch(/^#|^(?:\.\.\/)?[a-z0-9][\w./-]*(?:#[\w.%-]*)?$/u);
  });
});

describe("what becomes the name of a file", () => {
  /** Names that lead out, that are too long, that a disk takes for one another or for no file. */
  const NAMES = [
    ...HOSTILE.map(({ of }) => of("/nowhere", "f.md")).filter((name) => name.length < 1000),
    ...[
      "Café",
      "Cafe\u0301",
      "cafe",
      "CAFE",
      "a",
      "A",
      "a.html",
      "A.HTML",
      "x.",
      "x",
      "x ",
      "con",
      "Con.html",
      "nul.md",
      "COM1",
      "lpt9.txt",
      "aux.",
    ],
    ...["b".repeat(300), `${"b".repeat(300)}c`, "index", "index.html", "\u202elmth.x", ".hidden", "-", "…"],
  ];

  /** What a disk anywhere takes for one name. Unicode 15 of UAX 15; Microsoft as above. */
  const asOne = (path: string): string =>
    path
      .normalize("NFKC")
      .toLowerCase()
      .replace(/[. ]+(?=\/|$)/gu, "");

  test("of a build gives each a page of its own, wherever the site is copied to", async () => {
    const files = NAMES.map((name, index) => [
      `builds/d${index}.md`,
      `---\nbuild: ${line(name)}\ntitle: A\nstatus: draft\nfaces:\n  ${line(name.slice(0, 900))}: {columns: 1, rows: 1}\n---\n\n# A\n`,
    ]);
    const top = withOutside(Object.fromEntries(files) as Record<string, string>);
    const told = await unharmed(top, "publish", "--to", "../site");
    expect(told.status, told.err).toBe(0);
    const paths = Object.keys(held(join(top, "site"))).filter((path) => path !== ".plumbmark-site");
    expect(paths.filter((path) => /^builds\/[^/]*\.html$/u.test(path))).toHaveLength(NAMES.length + 1);
    expect(new Set(paths.map(asOne)).size).toBe(paths.length);
    const folders = new Set(
      paths.flatMap((path) =>
        path
          .split("/")
          .slice(0, -1)
          .map((_, end, steps) => steps.slice(0, end + 1).join("/")),
      ),
    );
    for (const path of paths) {
      expect(folders.has(path)).toBe(false);
      for (const step of path.split("/")) {
        expect(step).toMatch(/^[a-z0-9][a-z0-9._-]{0,200}$/u);
        expect(step).not.toMatch(/^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)|\.$/u);
      }
    }
  });

  test.each([...few(NAMES, 10), "house.con", "con", "a/b.c", "rigging.load"])(
    "of a rule that is %j writes only where rules are",
    async (name) => {
      const top = withOutside();
      const before = held(top);
      const told = await unharmed(top, "start", "rule", "--", name);
      const added = Object.keys(held(top)).filter((path) => !(path in before));
      expect(added.every((path) => /^docs\/house-rules\/[a-z][a-z0-9-]*\//u.test(path))).toBe(true);
      expect(told.status).toBe(added.length > 0 ? 0 : 2);
      if (/^(?:house\.)?con$/u.test(name)) expect(told.err).toContain("device");
    },
  );
});

describe("the command line", () => {
  const COMMANDS = [
    ["inspect", "VALUE"],
    ["inspect", "--standard", "VALUE"],
    ["inspect", "--since", "VALUE"],
    ["inspect", "--against", "VALUE"],
    ["workings", "VALUE"],
    ["takeoff", "VALUE"],
    ["takeoff", "builds/a.md", "VALUE"],
    ["workings", "builds/a.md", "VALUE"],
    ["rules", "VALUE"],
    ["collate", "VALUE"],
  ] as const;
  // No word of a command line can hold a zero byte: POSIX.1-2017, exec.
  const STRANGE = [
    ...HOSTILE.filter(({ name }) => !/upwards|absolute|above|link|root|point|zero/u.test(name)).map(({ of }) =>
      of("/nowhere", "f.md"),
    ),
    "--output=../out/made",
    "--upload-pack=touch ../out/made",
    "HEAD:../out/f.md",
    "builds/a.md\nx",
  ];

  // Every command with some of the values.
  test.each(
    COMMANDS.flatMap((words, index) =>
      few(
        STRANGE.map((value) => ({ words, value })),
        4,
        index,
      ),
    ),
  )("$words with $value", async ({ words, value }) => {
    const top = withOutside();
    const before = held(top);
    const given = words.map((word) => (word === "VALUE" ? value : word));
    const told = await unharmed(top, ...given);
    expect(held(top)).toEqual(before);
    expect(told.err.length).toBeLessThan(1500);
  });
});
