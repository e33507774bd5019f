import { openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { expect, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { openedStarter, starter, TODAY } from "./repository.js";

const whole = openedStarter();
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
  expect(openRepository(starter(), rules, { today: TODAY, every: true }).all()).toEqual(record);
});

test("what is listed changes nothing in what is counted", () => {
  const short = openRepository(starter(), rules, { today: TODAY }).all();
  expect(short.totals).toEqual(record.totals);
  const open = record.documents.map(({ checks }) => checks.filter(({ outcome }) => outcome !== "holds"));
  expect(short.documents.map(({ checks }) => checks)).toEqual(open);
});
