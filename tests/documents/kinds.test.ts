import { openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import { deep, effort } from "../run/effort.js";
import { notEmpty } from "../run/not-empty.js";
import { some, someOfEach } from "../run/some.js";
import { starter, TODAY } from "./repository.js";

/** What may stand in place of a value: a load is written as a mass or a force, a power in W or VA. */
const OTHERS: readonly (readonly [from: RegExp, to: string])[] = [
  [/: [\d.]+ (?:kg|lb|t)(?=[,}\n])/gu, ": 2 kN"],
  [/: [\d.]+ k?W(?=[,}\n])/gu, ": 300 VA"],
  [/: [\d.]+ VA(?=[,}\n])/gu, ": 300 W"],
];
/** Parts that are no hardware: named where a piece with a mass belongs. */
const NAMED = /(?<=\n {8}assembly: \[)[\w.-]+|(?<=part: )[\w.-]+|(?<=section: )[\w.-]+/gu;

/** Every kind of change, by what it puts there. */
const CHANGES = [...OTHERS, ...["cat6-solid", "wire-rope-1-4", "processor-6"].map((to) => [NAMED, to] as const)];

function* changed(text: string): Iterable<readonly [put: string, text: string]> {
  for (const [from, to] of CHANGES)
    for (const { index, 0: found } of text.matchAll(from))
      yield [to, text.slice(0, index) + to + text.slice(index + found.length)];
}

describe("a value of another kind, and a part of another, never throw", () => {
  const { documents, parts, ...rest } = starter();
  const inDocuments = documents.flatMap(({ path, text }) =>
    [...changed(text)].map(([put, is]) => ({ name: `${path}: ${put}`, kind: put, files: [{ path, text: is }] })),
  );
  const inParts = parts.flatMap(({ path, text }, at) =>
    [...changed(text)].map(([put, is]) => ({
      name: `${path}: ${put}`,
      kind: `${put} in parts`,
      parts: parts.with(at, { path, text: is }),
    })),
  );
  const all = [...inDocuments, ...inParts];
  // Each takes an inspection; a quick run tries one of each kind, and those in parts with one document, others each time.
  const tried = deep ? all : someOfEach(all, ({ kind }) => kind, 1, effort.seed);

  test("there are many to try", () => {
    expect(all.length).toBeGreaterThan(500);
    expect(tried.length).toBeGreaterThan(6);
  });

  test.each(notEmpty(tried.map((each) => [each.name, each] as const)))(
    "%s",
    (_, each) => {
      const beside = deep ? documents : some(documents, 1, effort.seed + each.name.length);
      const own = "files" in each ? { documents: each.files, parts } : { documents: beside, parts: each.parts };
      const record = openRepository({ ...rest, ...own }, rules, { today: TODAY, every: true }).all();
      expect(record.documents.length).toBeGreaterThan(0);
    },
    300_000,
  );
});
