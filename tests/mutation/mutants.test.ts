import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";

interface Mutant {
  readonly id: number;
  readonly was: string;
  readonly put: string;
}

const folder = new URL("../../packages/build-tools/src/mutation/", import.meta.url).href;
const { mutantsOf } = (await import(`${folder}mutants.mjs`)) as {
  mutantsOf: (path: string, text: string) => readonly Mutant[];
};
const { instrumented } = (await import(`${folder}instrument.mjs`)) as {
  instrumented: (text: string, mutants: readonly Mutant[]) => string;
};
const { equivalents } = (await import(`${folder}equivalent.mjs`)) as {
  equivalents: (
    list: string,
    mutants: readonly Mutant[],
    textOf: (path: string) => string,
  ) => { reasons: ReadonlyMap<Mutant, string>; stale: readonly object[] };
};

const changes = (text: string): readonly string[] => mutantsOf("a.ts", text).map(({ was, put }) => `${was} → ${put}`);

/** What a function gives with one change made at a time, unchanged first. */
function results(text: string, ...given: readonly number[]): readonly unknown[] {
  const mutants = mutantsOf("a.ts", text).map((each, id) => ({ ...each, id }));
  const code = `${instrumented(text, mutants)}; return work(${given.join(", ")});`;
  return [-1, ...mutants.keys()].map((active) => new Function("__mutant", code)((id: number) => id === active));
}

describe("what is changed", () => {
  test("figures, signs and boundaries, each in turn", () => {
    expect(changes("const work = (a) => a * 2 <= 100;")).toEqual([
      "a * 2 <= 100 → (a * 2) < (100)",
      "a * 2 <= 100 → (a * 2) > (100)",
      "a * 2 → (a) / (2)",
      "2 → 3",
      "100 → 110.00000000000001",
    ]);
  });
  test("a distance on the paper of a drawing is led astray, what is counted there is not", () => {
    const inDrawing = mutantsOf("docs-site/src/drawings/a.ts", "const work = (y) => [y - 1.5, index + 1];");
    expect(inDrawing.map(({ was, put }) => `${was} → ${put}`)).toEqual([
      "y - 1.5 → (y) + (1.5)",
      "1.5 → 41.5",
      "index + 1 → (index) - (1)",
      "1 → 2",
    ]);
  });
  test("how strong a line of a drawing is stays", () =>
    expect(mutantsOf("docs-site/src/drawings/a.ts", "const look = { strokeWidth: 0.15, rx: 2 };")).toMatchObject([
      { was: "2", put: "3" },
    ]));
  test("least and greatest change places", () => {
    expect(changes("const work = (a, b) => Math.min(a, b);")).toEqual(["Math.min(a, b) → Math.max(a, b)"]);
  });
  test("texts, types, keys, worked examples and fineness stay", () => {
    expect(changes('type A = 1 | 2; const a = { 60: "x" + y, example: { given: 5 } }; const b = c < 1e-9;')).toEqual([
      "c < 1e-9 → (c) >= (1e-9)",
    ]);
  });
});

describe("what a change does", () => {
  test("one switch makes one change, also inside another", () => {
    // 3 × 2 + 1 = 7: as minus 5, as a quotient 2.5, with 3 for 2 it is 10, with 2 for 1 it is 8.
    expect(results("const work = (a) => a * 2 + 1;", 3)).toEqual([7, 5, 2.5, 10, 8]);
  });
  test("a boundary is moved, then turned round", () => {
    expect(results("const work = (a, b) => a < b;", 2, 2)).toEqual([false, true, true]);
    expect(results("const work = (a, b) => a < b;", 1, 2)).toEqual([true, true, false]);
  });
});

describe("the list of changes that make no difference", () => {
  const source = "const work = (a, b) => a + 1;\nconst other = a < b ? 0 : 1;";
  const known = mutantsOf("a.ts", source);
  const entry = (line: string, change: string) =>
    JSON.stringify([{ file: "a.ts", line, changes: [change], because: "a tie" }]);
  test("an entry is met by its line's text, wherever the line stands", () => {
    const { reasons, stale } = equivalents(
      entry("const other = a < b ? 0 : 1;", "a < b → (a) <= (b)"),
      known,
      () => source,
    );
    expect([...reasons].map(([{ put }, why]) => `${put}: ${why}`)).toEqual(["(a) <= (b): a tie"]);
    expect(stale).toEqual([]);
  });
  test("an entry goes out of date with its line", () =>
    expect(equivalents(entry("const other = a < c;", "a < b → (a) <= (b)"), known, () => source).stale).toHaveLength(
      1,
    ));
  test("no entry of the list kept here is out of date", () => {
    const text = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");
    const list = text("tests/mutation/equivalent.yaml");
    const files = [...new Set([...list.matchAll(/file: (\S+)/gu)].map(([, file]) => file as string))];
    const all = files.flatMap((path) => mutantsOf(path, text(path)));
    expect(equivalents(list, all, text).stale).toEqual([]);
  });
});

const { OFFERED } = (await import(`${folder}bundle.mjs`)) as { OFFERED: readonly string[] };
const { importsOf, testFiles } = (await import(`${folder}files.mjs`)) as {
  importsOf: (path: string, text: string) => readonly string[];
  testFiles: () => readonly string[];
};

test("what the tests take from their runner stands ready for them", () => {
  const taken = new Set<string>();
  const reached = new Set(notEmpty(testFiles()));
  for (const path of reached) {
    const text = readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");
    // Types are gone when a test runs, and what is kept for a whole run is made anew.
    const own = [...text.matchAll(/^import \{([^}]*)\} from "vitest"/gmu)].flatMap(
      ([, names]) => names?.split(",") ?? [],
    );
    for (const name of own.map((each) => each.trim())) if (name !== "" && !name.startsWith("type ")) taken.add(name);
    for (const each of importsOf(path, text))
      if (each.startsWith("tests/") && each !== "tests/run/once-a-run.ts") reached.add(each);
  }
  expect(reached.size).toBeGreaterThan(100);
  expect([...taken].filter((name) => !OFFERED.includes(name))).toEqual([]);
});

const { wilson } = (await import(`${folder}report.mjs`)) as {
  wilson: (caught: number, count: number) => readonly [number, number];
};
interface Suite {
  readonly held: { test: typeof test; file: (path: string, load: () => void) => void };
  readonly testsOf: (file: string) => readonly { name: string }[];
}
const { suite } = (await import(`${folder}tests-shim.mjs`)) as { suite: () => Suite };

describe("what a sample tells", () => {
  // Newcombe, Two-sided confidence intervals for the single proportion, Stat. Med. 17 (1998), table I, score method:
  // 81 of 263 gives 0.2553 to 0.3662, 15 of 148 gives 0.0624 to 0.1605.
  test.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
  ])("%i of %i", (caught, count, low, high) => {
    const [from, to] = wilson(caught, count);
    expect([from.toFixed(4), to.toFixed(4)]).toEqual([low.toFixed(4), high.toFixed(4)]);
  });
});

describe("the title of a case", () => {
  test("has the fields and values it names, and nothing else of them", () => {
    const { held, testsOf } = suite();
    held.file("a", () => {
      held.test.each([{ name: "one", text: "long" }])("$name", () => {});
      held.test.each([["two", { id: 2 }]])("%s holds", () => {});
      held.test.each([["three"], ["four"]])("alike", () => {});
    });
    expect(testsOf("a").map(({ name }) => name)).toEqual([" > one", " > two holds", " > alike", " > alike (2)"]);
  });
});
