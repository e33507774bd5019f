import { existsSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { PACKAGES, ROOT, sourcesUnder } from "./graph.js";

/** Everything a source imports: static, re-exported, for its side effect, at run time or as a type. */
const IMPORT =
  /(?:^|[;\s}])(?:import|export)\s*(?:[\w*{},\s$]*?\sfrom\s*)?["']([^"']+)["']|\bimport\(\s*["']([^"']+)["']\s*\)/gmu;

const withoutComments = (text: string): string => text.replace(/\/\*[\s\S]*?\*\//gu, "").replace(/^\s*\/\/.*$/gmu, "");

const importsOf = (text: string): readonly string[] =>
  [...withoutComments(text).matchAll(IMPORT)].map((match) => (match[1] ?? match[2]) as string);

describe("the reading of imports", () => {
  test.each([
    [`import { a } from "@plumbmark/calc";`, "@plumbmark/calc"],
    [`import type {\n  A,\n  B,\n} from "@plumbmark/core";`, "@plumbmark/core"],
    [`import x, * as y from 'node:fs';`, "node:fs"],
    [`import "node:path";`, "node:path"],
    [`export * from "./a.js";`, "./a.js"],
    [`const a = await import("node:os");`, "node:os"],
  ])("%s", (text, wanted) => expect(importsOf(text)).toEqual([wanted]));

  test("leaves comments and prose alone", () =>
    expect(importsOf(`// import "node:fs";\n/* export * from "x" */\nconst a = "import";`)).toEqual([]));
});

describe.each(notEmpty(PACKAGES.filter(({ folder }) => existsSync(join(ROOT, folder)))))(
  "$name",
  ({ name, folder, before, pure }) => {
    const sources = sourcesUnder(folder);
    const imports = sources.flatMap((file) =>
      importsOf(readFileSync(join(ROOT, file), "utf8")).map((what) => ({ file, what })),
    );

    test("imports only packages that come before it", () => {
      const packageOf = (what: string): string => what.split("/", 2).join("/");
      const allowed = [name, ...before.map((each) => `@plumbmark/${each}`)];
      expect(
        imports.filter(({ what }) => what.startsWith("@plumbmark/") && !allowed.includes(packageOf(what))),
      ).toEqual([]);
    });

    test("reaches into no other package by a relative path", () => {
      const outside = imports.filter(
        ({ file, what }) => what.startsWith(".") && relative(folder, join(file, "..", what)).startsWith(".."),
      );
      expect(outside.filter(({ what }) => !what.endsWith("package.json"))).toEqual([]);
    });

    test("declares every package it imports", () => {
      const declared = JSON.parse(
        readFileSync(join(ROOT, folder.replace(/\/src$/u, ""), "package.json"), "utf8"),
      ) as Record<string, Record<string, string>>;
      const known = Object.keys({
        ...declared.dependencies,
        ...declared.devDependencies,
        ...declared.peerDependencies,
      });
      const packages = imports
        .filter(({ what }) => !what.startsWith(".") && !what.startsWith("node:"))
        .map(({ file, what }) => ({ file, what: /^(?:@[^/]+\/)?[^/]+/u.exec(what)?.[0] as string }));
      // Types of mdast come from the package of their types.
      expect(
        packages.filter(({ what }) => what !== name && !known.includes(what) && !known.includes(`@types/${what}`)),
      ).toEqual([]);
    });

    test.runIf(pure)("imports nothing of Node.js, so that it runs in a browser", () => {
      expect(sources.length).toBeGreaterThan(0);
      expect(imports.filter(({ what }) => what.startsWith("node:"))).toEqual([]);
    });
  },
);

test("rules import @plumbmark/kit, @plumbmark/calc and their neighbours only, as an outside author does", () => {
  const rules = sourcesUnder("rules");
  expect(rules.length).toBeGreaterThan(10);
  const imports = rules.flatMap((file) => importsOf(readFileSync(join(ROOT, file), "utf8")));
  expect(
    [...new Set(imports.filter((what) => !what.startsWith(".")))].filter(
      (what) => !["@plumbmark/kit", "@plumbmark/calc"].includes(what),
    ),
  ).toEqual([]);
});
