import { inspect, inspection } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { expect, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { starter, TODAY } from "./repository.js";

const whole = inspection(starter(), rules, { today: TODAY, every: true });

test.each(notEmpty([...whole.builds]))("%s: each value is found alone as it is found among all", (_file, { build }) => {
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
  expect(inspect(starter(), rules, { today: TODAY, every: true })).toEqual(whole.record);
});

test("what is listed changes nothing in what is counted", () => {
  const short = inspect(starter(), rules, { today: TODAY });
  expect(short.totals).toEqual(whole.record.totals);
  const open = whole.record.documents.map(({ checks }) => checks.filter(({ outcome }) => outcome !== "holds"));
  expect(short.documents.map(({ checks }) => checks)).toEqual(open);
});
