import { openRepository, type RepositoryFiles, type SourceFile, stockFiles } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { expect, inject, test } from "vitest";
import { starter, TODAY } from "../documents/repository.js";
import { some } from "../run/some.js";

// Whether holdings stand in one file or in several says nothing about what is owned: everything has to come out alike.

const whole = starter();
const [one] = stockFiles(whole) as [SourceFile];
const itemsAt = one.text.indexOf("\nitems:");

const divided = (...files: readonly SourceFile[]): RepositoryFiles => {
  const { stock: _, ...rest } = whole;
  const [stock, ...moreStock] = files as [SourceFile, ...SourceFile[]];
  return { ...rest, stock, moreStock };
};

const LOTS = { path: "stock/lots.yaml", text: one.text.slice(0, itemsAt + 1) };
const ITEMS = { path: "stock/items.yaml", text: one.text.slice(itemsAt + 1) };
const TWO = divided(ITEMS, LOTS);

const open = (files: RepositoryFiles) => openRepository(files, rules, { today: TODAY, turns: false });

/** All documents in a deep run; else so many of those that name a lot, others in each run. */
const { deep, seed } = inject("effort");
const naming = whole.documents.filter(({ text }) => text.includes("lot-2431"));
const tried = (count: number): RepositoryFiles["documents"] => (deep ? whole.documents : some(naming, count, seed));

test("holdings in two files come to what they come to in one", () => {
  const documents = tried(2);
  const [together, apart] = [open({ ...whole, documents }), open({ ...TWO, documents })];
  expect(apart.stock.lots).toEqual(together.stock.lots);
  expect(apart.stock.items).toEqual(together.stock.items);
  expect(apart.stock.days).toEqual(together.stock.days);
  expect([together.stock.lots.size > 1, together.stock.items.size > 10]).toEqual([true, true]);
  const builds = (repository: typeof apart) =>
    repository.all().documents.map(({ file, verdict, counts }) => [file, verdict, counts]);
  expect(builds(apart)).toEqual(builds(together));
  const code = (repository: typeof apart) =>
    repository.documents.map((path) => repository.model(path).build.approval.code);
  expect(code(apart)).toEqual(code(together));
});

test("two repositories share their holdings however they are divided into files", () => {
  const code = (files: RepositoryFiles): string | undefined => open({ ...files, documents: [] }).all().holdings;
  expect(code(TWO)).toBe(code(divided(LOTS, ITEMS)));
  expect(code(TWO)).not.toBe(code(divided(LOTS, { ...ITEMS, text: ITEMS.text.replace("count: 18", "count: 17") })));
});

test.each([
  ["lots", "lots: {a: {panel: tile, count: 2}}", "The lot `a` is also in a.yaml:1:8."],
  ["items", "items: {a: {count: 2}}", "The item `a` is also in a.yaml:1:9."],
  ["days", "days: {out: 1}", "The days out and back are also in a.yaml:1:1."],
])("what stands under `%s` of two files is a mistake with both places", (_, text, says) => {
  const [stock, second] = [
    { path: "a.yaml", text: `${text}\n` },
    { path: "b.yaml", text: `# Others\n${text}\n` },
  ];
  const files = { parts: [], documents: [], stock, moreStock: [second] };
  const { documents } = openRepository(files, [], { today: TODAY }).all();
  expect(documents.map(({ file, verdict, checks }) => [file, verdict, checks.map((each) => each.says)])).toEqual([
    ["b.yaml", "not ready", [says]],
  ]);
  expect(documents[0]?.checks[0]?.at.line).toBe(2);
});

test("what stands in two files counts as the first has it", () => {
  const lot = (count: number, path: string) => ({ path, text: `lots: {a: {panel: tile, count: ${count}}}\n` });
  expect(open({ ...divided(lot(2, "a.yaml"), lot(9, "b.yaml")), documents: [] }).stock.lots.get("a")?.count).toBe(2);
});

test("an approval is of what a build names in any of the files", () => {
  const code = (files: RepositoryFiles) => {
    const repository = open(files);
    return new Map(repository.documents.map((path) => [path, repository.model(path).build.approval.code]));
  };
  const was = code(TWO);
  const is = code(divided(ITEMS, { ...LOTS, text: LOTS.text.replace("count: 40", "count: 41") }));
  const ended = [...was.keys()].filter((path) => was.get(path) !== is.get(path));
  expect(ended.length).toBeGreaterThan(0);
  expect(naming.map(({ path }) => path)).toEqual(expect.arrayContaining(ended));
});

test("a file that is changed, added or taken out in an open repository is read with the others", () => {
  const repository = open({ ...whole, documents: tried(1) });
  repository.all();
  const now = () => stockFiles(repository.files).map(({ path }) => path);
  repository.replace("more.yaml", "lots: {lot-more: {panel: tile-500-p4.2, count: 3}}\n", "stock");
  expect(now()).toEqual(["more.yaml", one.path]);
  expect(repository.stock.lots.get("lot-more")?.count).toBe(3);
  repository.replace(one.path, one.text.replace("count: 40", "count: 4"));
  expect(repository.all()).toEqual(open(repository.files).all());
  repository.replace(one.path, undefined);
  expect([now(), [...repository.stock.lots.keys()]]).toEqual([["more.yaml"], ["lot-more"]]);
  expect(repository.all()).toEqual(open(repository.files).all());
});
