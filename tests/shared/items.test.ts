import { openRepository, type RepositoryFiles } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { deep } from "../run/effort.js";
import { notEmpty } from "../run/not-empty.js";
import { type NaiveUse, naiveWorst } from "./naive.js";

const RULE = "stock.promised-twice";
const DAY = 86_400_000;
const START = Date.parse("2027-05-01");
const dayAt = (offset: number): string => new Date(START + offset * DAY).toISOString().slice(0, 10);

interface Written {
  readonly from: number;
  readonly days: number;
  readonly count: number;
  readonly draft: boolean;
}

const parts = [
  {
    path: "parts/parts.yaml",
    text: "lock: {kind: spare-part, mass: 0.2 kg}\ncord: {kind: power-cable, mass: 0.2 kg/m}\n",
  },
];

const builds = (all: readonly Written[]): RepositoryFiles["documents"] =>
  all.map(({ from, days, count, draft }, index) => ({
    path: `builds/b${index}.md`,
    text: [
      "---",
      `build: b${index}`,
      "title: Banner",
      `status: ${draft ? "draft" : "for-build"}`,
      `on-site: ${dayAt(from)} to ${dayAt(from + days)}`,
      `also-bring: {lock: ${count}}`,
      "---",
      "",
    ].join("\n"),
  }));

const written = fc.record({
  from: fc.integer({ min: 0, max: 60 }),
  days: fc.integer({ min: 0, max: 9 }),
  count: fc.integer({ min: 1, max: 5 }),
  draft: fc.boolean(),
});

const inspected = (files: RepositoryFiles) =>
  openRepository(
    files,
    rules.filter(({ id }) => id === RULE),
    { today: "2027-01-01", every: true },
  ).all().documents;

describe("what is promised of an item", () => {
  test("is what a loop over every day comes to, with the days out and back", () => {
    fc.assert(
      fc.property(
        fc.array(written, { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 0, max: 3 }),
        fc.integer({ min: 0, max: 3 }),
        fc.integer({ min: 1, max: 9 }),
        (all, out, back, owned) => {
          const stock = {
            path: "stock.yaml",
            text: `items: {lock: {count: ${owned}}}\ndays: {out: ${out}, back: ${back}}\n`,
          };
          const documents = inspected({ parts, stock, documents: builds(all) });
          const away = all.map(({ from, days, count, draft }, index): NaiveUse & { readonly draft: boolean } => ({
            file: `builds/b${index}.md`,
            from: dayAt(from - out),
            to: dayAt(from + days + back),
            amounts: { n: count },
            draft,
          }));
          expect(documents.length).toBe(all.length);
          for (const [index, own] of notEmpty(away.entries())) {
            const checks = documents[index]?.checks.filter(({ level }) => level === "shall") ?? [];
            expect(checks.length).toBe(1);
            const most = naiveWorst(
              own,
              away.filter((each) => each === own || !each.draft),
              "n",
            );
            expect(checks[0]?.measured?.value).toBe(most);
            expect(checks[0]?.outcome).toBe(most <= owned ? "holds" : "fails");
            const told = documents[index]?.checks.filter(({ level }) => level === "note") ?? [];
            const drafts = away.some(
              (each) => each !== own && each.draft && each.from <= own.to && own.from <= each.to,
            );
            expect(told.map(({ measured }) => measured?.value)).toEqual(drafts ? [naiveWorst(own, away, "n")] : []);
          }
        },
      ),
      { numRuns: deep ? 3000 : 60 },
    );
  });

  test("without days it is on every day for others at level note, and open for itself", () => {
    const [one, other] = builds([
      { from: 0, days: 1, count: 3, draft: false },
      { from: 0, days: 0, count: 3, draft: false },
    ]) as [{ path: string; text: string }, { path: string; text: string }];
    const undated = { ...other, text: other.text.replace(/on-site: .*\n/u, "") };
    const stock = { path: "stock.yaml", text: "items: {lock: {count: 5}}\n" };
    const [first, second] = inspected({ parts, stock, documents: [one, undated] });
    expect(first?.checks.map(({ level, outcome }) => `${level} ${outcome}`).sort()).toEqual([
      "note fails",
      "shall holds",
    ]);
    expect(second?.checks.filter(({ level }) => level === "shall").map(({ outcome }) => outcome)).toEqual(["open"]);
    expect(first?.verdict).toBe("ready");
  });

  test("names the other documents with what they take, in each of them", () => {
    const documents = builds([
      { from: 0, days: 1, count: 3, draft: false },
      { from: 1, days: 1, count: 4, draft: false },
    ]);
    const stock = { path: "stock.yaml", text: "items: {lock: {count: 5}}\n" };
    const [first, second] = inspected({ parts, stock, documents });
    expect(first?.checks.map(({ says }) => says)).toEqual([
      "Of lock 7 are promised; there are 5. On 2027-05-02 with builds/b1.md (also-bring.lock) 4.",
    ]);
    expect(second?.checks.map(({ says }) => says)).toEqual([
      "Of lock 7 are promised; there are 5. On 2027-05-02 with builds/b0.md (also-bring.lock) 3.",
    ]);
  });
});

test("what is free on some days is what is owned less what is promised on the fullest of them", () => {
  const documents = builds([
    { from: 0, days: 1, count: 3, draft: false },
    { from: 4, days: 0, count: 1, draft: false },
    { from: 4, days: 0, count: 1, draft: true },
  ]);
  const stock = { path: "stock.yaml", text: "items: {lock: {count: 5}}\ndays: {out: 1, back: 1}\n" };
  const repository = openRepository({ parts, stock, documents }, [], { today: "2027-01-01" });
  const free = (from: number, to: number, but?: string) =>
    repository.free({ stay: { from: dayAt(from), to: dayAt(to) }, ...(but === undefined ? {} : { but }) }).item("lock");
  expect(free(0, 0)).toEqual({ owned: 5, taken: 3, free: 2, unknown: [] });
  // Loaded on the third, when the first build's are on their way back, and the second's are loaded.
  expect(free(3, 3)).toEqual({ owned: 5, taken: 3, free: 2, unknown: [] });
  expect(free(4, 9)).toEqual({ owned: 5, taken: 1, free: 4, unknown: [] });
  expect(free(20, 20)).toEqual({ owned: 5, taken: 0, free: 5, unknown: [] });
  expect(free(0, 9, "builds/b0.md")).toEqual({ owned: 5, taken: 1, free: 4, unknown: [] });
  expect(repository.free({ stay: { from: dayAt(0) } }).item("cord")).toBeUndefined();
});
