import { openRepository } from "@plumbmark/core";
import { expect, test } from "vitest";
import { ferry, PARTS } from "./hall.js";

// A bridle with legs of 45° on both sides: each pulls with the load divided by the square root of 2. That is the balance
// of forces at the apex, as every textbook of statics has it (2 T sin a = W).
const POUND = 0.45359237;
const BUILD = "builds/quay-banner.md";

const H1 = (left: string, right: string): [string, string] => [
  "H1: {point: front-beam.F1, at: 1 ft}",
  `H1: {at: 2 ft, bridle: {left: {${left}rise: 3 ft, run: 3 ft, assembly: [sling]}, right: {${right}rise: 3 ft, run: 3 ft, assembly: [sling]}}}`,
];

function opened(left: string, right: string) {
  const H2: [string, string] = [
    "H2: {point: front-beam.F2}",
    "H2: {point: front-beam.F3, at: 7 ft, assembly: [sling]}",
  ];
  const second: [string, string] = ["slack: none}", "slack: none, assembly: [sling]}"];
  const parts = [
    {
      path: "parts/p.yaml",
      text: `${PARTS.replace("columns: 1}", "columns: 1, mass: 1 kg}")}sling: {kind: hardware, wll: 500 kg, breaking: 2500 kg, mass: 1 kg}\n`,
    },
  ];
  return openRepository(ferry({ build: [H1(left, right), H2, second] }, { parts }), [], { today: "2026-12-01" });
}

const AT_POINTS = ["point: front-beam.F1, ", "point: front-beam.F2, "] as const;

test("the legs of a bridle have the rating, the catch and the letter of their points", () => {
  const { build } = opened(...AT_POINTS).model(BUILD);
  expect(build.mistakes).toEqual([]);
  const [hang] = build.bars[0]?.hangs ?? [];
  const pounds = hang?.legs.map(({ structure, catching }) =>
    [structure, catching].map((value) => value.known && value.value / POUND),
  );
  expect(pounds).toEqual([
    [expect.closeTo(500, 9), expect.closeTo(900, 9)],
    [expect.closeTo(480, 9), expect.closeTo(900, 9)],
  ]);
  expect(build.bars[0]?.letter.text("by")).toBe("I. Brandt");
});

test("what a leg pulls is on its point, and the whole hang on the structure", () => {
  const repository = opened(...AT_POINTS);
  const [bar] = repository.model(BUILD).build.bars;
  const [hang] = bar?.hangs ?? [];
  const load = hang?.worst.reaction;
  if (!load?.known || !bar?.onStructure.known) throw new Error("the load is not known");
  expect(load.value).toBeGreaterThan(10);
  const uses = repository.uses(BUILD);
  const on = (of: string, name: string) => uses.filter((each) => each.of === of && each.name === name);
  for (const [name, side, allowed] of [
    ["front-beam.F1", "left", 500],
    ["front-beam.F2", "right", 480],
  ] as const) {
    const [use, ...more] = on("point", name);
    expect(more).toEqual([]);
    expect(use?.path).toBe(`rigging.bars.header.hangs.H1.bridle.${side}`);
    expect(use?.amounts.W).toBeCloseTo(load.value / Math.SQRT2 + 1, 6);
    expect(use?.allowed).toBeCloseTo(allowed * POUND, 6);
  }
  const beam = on("structure", "front-beam");
  expect(beam.map(({ amounts }) => amounts.W)).toEqual([expect.closeTo(bar.onStructure.value, 6)]);
});

test("a rating that is written otherwise contradicts the survey, and a point has to be there", () => {
  const other = opened("point: front-beam.F1, structure: 700 lb, ", "point: front-beam.F9, ").model(BUILD).build;
  expect(other.mistakes.map(({ path, says }) => `${path} ${says}`)).toEqual([
    "rigging.bars.header.hangs.H1.bridle.right.point The survey ferry-hall has no point `front-beam.F9`.",
  ]);
  // What the survey says is what counts.
  const structure = other.bars[0]?.hangs[0]?.legs[0]?.structure;
  expect(structure?.known && structure.value / POUND).toBeCloseTo(500, 9);
});
