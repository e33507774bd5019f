import { openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { expect, inject, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { some } from "../run/some.js";
import { starter, TODAY } from "./repository.js";

/** All documents of the starter in a deep run; else two of them, others in each run. */
const { deep, seed } = inject("effort");
const documents = deep ? starter().documents : some(starter().documents, 2, seed);
const files = { ...starter(), documents };
const whole = openRepository(files, rules, { today: TODAY, every: true, keep: "models" });
const record = whole.all();

test.each(notEmpty(whole.documents))("%s: each value is found alone as it is found among all", (file) => {
  const { build } = whole.one(file);
  const found = [...build.values].map(([path, value]) => [path, value.known ? value.value : value.gaps] as const);
  expect(found.length).toBeGreaterThan(50);
  for (const [path, expected] of found) {
    const alone = build.valueAt(path);
    expect([path, alone?.known ? alone.value : alone?.gaps]).toEqual([path, expected]);
  }
  expect(build.valueAt("faces.nowhere.mass")).toBeUndefined();
  expect(build.valueAt("")).toBeUndefined();
});

test("an inspection that keeps nothing comes to the same record as one that keeps the models", () => {
  expect(openRepository(files, rules, { today: TODAY, every: true }).all()).toEqual(record);
});

test("what is listed changes nothing in what is counted", () => {
  const short = openRepository(files, rules, { today: TODAY }).all();
  expect(short.totals).toEqual(record.totals);
  const open = record.documents.map(({ checks }) => checks.filter(({ outcome }) => outcome !== "holds"));
  expect(short.documents.map(({ checks }) => checks)).toEqual(open);
});
