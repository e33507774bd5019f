import { openRepository, outlineOf } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { expect, test } from "vitest";
import { ferry } from "./hall.js";

const TODAY = "2026-12-01";
const PATH = "builds/quay-banner.md";
const opened = (...given: Parameters<typeof ferry>) =>
  openRepository(ferry(...given), rules, { today: TODAY, every: true });

test("an entry that is like another is expanded before it is validated, and before the survey completes it", () => {
  const { build } = opened({
    build: [
      ["{stage-5: {serves: [rack-a]}}", "{stage-5: {serves: [rack-a], other-load: 100 VA}, stage-4: {like: stage-5}}"],
      ["H2: {point: front-beam.F2}", "H2: {like: H1, point: front-beam.F2, at: 5 ft}"],
    ],
  }).model(PATH);
  expect(build.mistakes).toEqual([]);
  const four = build.circuits.find(({ name }) => name === "stage-4");
  expect(four?.serves).toEqual(["rack-a"]);
  expect(four?.breaker).toMatchObject({ value: 20 });
  expect(build.bars[0]?.hangs[1]?.point).toEqual({ structure: "front-beam", point: "F2" });
});

test.each([
  [
    "an entry that is not there",
    "{stage-5: {like: stage-9, serves: [rack-a]}}",
    "There is no `stage-9` beside `stage-5` to be like.",
  ],
  ["an entry that is like itself", "{stage-5: {like: stage-5, serves: [rack-a]}}", "`stage-5` is like itself."],
])("%s is a mistake at its place", (_, written, says) => {
  const [found, ...others] = opened({ build: [["{stage-5: {serves: [rack-a]}}", written]] }).model(PATH).build.mistakes;
  expect(others).toEqual([]);
  expect(found).toMatchObject({ says, path: "power.circuits.stage-5.like", place: { line: 11, column: 30 } });
});

test("YAML aliases stay refused", () => {
  const { mistakes } = opened({
    build: [["{stage-5: {serves: [rack-a]}}", "{stage-5: &a {serves: [rack-a]}, stage-4: *a}"]],
  }).model(PATH).build;
  expect(mistakes.map(({ says }) => says)).toContain("An alias (`*name`) stands here.");
});

test("what others have to know of a face counts those that are like it", () => {
  const text = `---
build: pair
on-site: 2027-03-05
faces:
  left: {columns: 3, rows: 2, spares: 1, lot: lot-1}
  right: {like: left, columns: 4}
---
`;
  // 3 × 2 + 1 and 4 × 2 + 1.
  expect(outlineOf({ path: PATH, text }).promises.map(({ face, count }) => [face, count])).toEqual([
    ["left", 7],
    ["right", 9],
  ]);
});

test("a guess of the survey opens what rests on it, by the build's own path", () => {
  const load: [string, string] = ["circuits: {stage-5: {serves: [rack-a]}}", "circuits: {stage-4: {other-load: none}}"];
  const found = (breaker: string) =>
    opened({ build: [load], hall: [["breaker: 20 A, control", `breaker: ${breaker}, control`]] })
      .one(PATH)
      .entry.checks.find(({ rule, at }) => rule === "power.circuit-load" && at.path === "power.circuits.stage-4");
  expect(found("20 A")).toMatchObject({ outcome: "holds" });
  expect(found("20 A ?")).toMatchObject({
    outcome: "open",
    "if-right": "holds",
    "rests-on-guesses": ["power.circuits.stage-4.breaker"],
  });
});

test("what does not hold tells where in the survey its figure stands", () => {
  const load: [string, string] = [
    "circuits: {stage-5: {serves: [rack-a]}}",
    "circuits: {stage-4: {other-load: 2000 VA}}",
  ];
  const found = opened({ build: [load] })
    .one(PATH)
    .entry.checks.find(({ rule, at }) => rule === "power.circuit-load" && at.path === "power.circuits.stage-4");
  expect(found).toMatchObject({ outcome: "fails", at: { line: 11 } });
  expect(found?.["stated-in"]).toContainEqual({
    file: "venues/ferry-hall.md",
    path: "circuits.stage-4.breaker",
    line: 18,
    by: "the survey of 2026-10-02 by R. Tallow",
  });
  expect(found?.working?.flatMap(({ from = [] }) => from)).toContain(
    "20 A: the survey of 2026-10-02 by R. Tallow, venues/ferry-hall.md, line 18",
  );
});

test("what waits for a mistake of the survey says so, and what does not wait for it does not", () => {
  const load: [string, string] = ["circuits: {stage-5: {serves: [rack-a]}}", "circuits: {stage-4: {other-load: none}}"];
  const checks = opened({ build: [load], hall: [["breaker: 20 A, control", "braker: 20 A, control"]] }).one(PATH).entry
    .checks;
  const load4 = checks.find(({ rule, at }) => rule === "power.circuit-load" && at.path === "power.circuits.stage-4");
  expect(load4).toMatchObject({
    outcome: "open",
    "follows-from": { file: "venues/ferry-hall.md", path: "circuits.stage-4.braker", line: 18 },
  });
  const others = checks.filter(({ rule, outcome }) => rule === "rigging.rated-hardware" && outcome === "open");
  expect(others.length).toBeGreaterThan(0);
  expect(others.map((check) => check["follows-from"])).toEqual(others.map(() => undefined));
});
