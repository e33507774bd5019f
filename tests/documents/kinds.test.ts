import { openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import { deep, effort } from "../run/effort.js";
import { notEmpty } from "../run/not-empty.js";
import { starter, TODAY } from "./repository.js";

/** What may stand in place of a value: a load is written as a mass or a force, a power in W or VA. */
const OTHERS: readonly (readonly [from: RegExp, to: string])[] = [
  [/: [\d.]+ (?:kg|lb|t)(?=[,}\n])/gu, ": 2 kN"],
  [/: [\d.]+ k?W(?=[,}\n])/gu, ": 300 VA"],
  [/: [\d.]+ VA(?=[,}\n])/gu, ": 300 W"],
];
/** Parts that are no hardware: named where a piece with a mass belongs. */
const NAMED = /(?<=\n {8}assembly: \[)[\w.-]+|(?<=part: )[\w.-]+|(?<=section: )[\w.-]+/gu;

function* changed(text: string): Iterable<string> {
  const changes = [...OTHERS, ...["cat6-solid", "wire-rope-1-4", "processor-6"].map((to) => [NAMED, to] as const)];
  for (const [from, to] of changes)
    for (const { index, 0: found } of text.matchAll(from))
      yield text.slice(0, index) + to + text.slice(index + found.length);
}

describe("a value of another kind, and a part of another, never throw", () => {
  const { documents, parts, ...rest } = starter();
  const inspected = (more: Partial<ReturnType<typeof starter>>) =>
    openRepository({ ...rest, documents, parts, ...more }, rules, { today: TODAY, every: true }).all();
  // Each takes an inspection; a quick run tries some, others each time.
  const EVERY = deep ? 1 : 60;
  const texts = [...documents, ...parts].map(({ path, text }) => {
    const all = [...changed(text)];
    return { path, texts: all.filter((_, index) => (index + effort.seed) % Math.min(EVERY, all.length) === 0) };
  });

  test("there are many to try", () => expect(texts.flatMap((each) => each.texts).length).toBeGreaterThan(10));

  test.each(notEmpty(texts.filter((each) => each.texts.length > 0)))(
    "$path",
    ({ path, texts: all }) => {
      const isDocument = documents.some((each) => each.path === path);
      for (const text of notEmpty(all)) {
        const record = isDocument
          ? inspected({ documents: [{ path, text }] })
          : inspected({ parts: parts.map((each) => (each.path === path ? { path, text } : each)) });
        expect(record.documents.length).toBeGreaterThan(0);
      }
    },
    300_000,
  );
});
