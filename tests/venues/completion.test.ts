import { openRepository } from "@plumbmark/core";
import { expect, test } from "vitest";
import { ferry } from "./hall.js";

const TODAY = "2026-12-01";
const opened = (...given: Parameters<typeof ferry>) => openRepository(ferry(...given), [], { today: TODAY });
const buildOf = (...given: Parameters<typeof ferry>) => opened(...given).model("builds/quay-banner.md").build;
const mistakesOf = (...given: Parameters<typeof ferry>) =>
  buildOf(...given).mistakes.map(({ path, says, place }) => `${path}:${place.line} ${says}`);

const FOOT = 0.3048;
const POUND = 0.45359237;

test("the build is read without a mistake", () => expect(mistakesOf()).toEqual([]));

test("circuits that runs or the build name come from the survey, with their supplies", () => {
  const build = buildOf();
  expect(build.circuits.map(({ name }) => name).sort()).toEqual(["stage-4", "stage-5"]);
  const [five, four] = ["stage-5", "stage-4"].map((name) => build.circuits.find((each) => each.name === name));
  expect(four?.breaker).toMatchObject({ known: true, value: 20 });
  expect(five?.breaker).toMatchObject({ known: true, value: 15 });
  expect(four?.voltage).toMatchObject({ value: 120 });
  expect(five?.serves).toEqual(["rack-a"]);
  expect(build.supplies.map(({ name }) => name)).toEqual(["panel-b"]);
  expect(build.supplies[0]?.breaker).toMatchObject({ value: 100 });
});

test("a value says which survey it is from", () => {
  const breaker = buildOf().circuits.find(({ name }) => name === "stage-4")?.breaker;
  expect(breaker?.known && breaker.origin).toMatchObject({
    from: "written",
    stated: {
      file: "venues/ferry-hall.md",
      path: "circuits.stage-4.breaker",
      by: "the survey of 2026-10-02 by R. Tallow",
    },
  });
});

test("a hang has the rating, the catch and the letter of its point, and its place from there", () => {
  const [bar] = buildOf().bars;
  expect(bar?.under).toBe("front-beam");
  // F2 is 4 ft along from F1, and F1 stands 1 ft from the bar's left end.
  expect(bar?.hangs[1]?.at.known && bar.hangs[1].at.value).toBeCloseTo(5 * FOOT, 12);
  expect(bar?.hangs.map(({ structure }) => structure.known && structure.value / POUND)).toEqual([
    expect.closeTo(500, 9),
    expect.closeTo(480, 9),
  ]);
  expect(bar?.hangs[0]?.catching.known && bar.hangs[0].catching.value / POUND).toBeCloseTo(900, 9);
  expect(bar?.letter.text("by")).toBe("I. Brandt");
  expect(bar?.bearingHeight.known && bar.bearingHeight.value / FOOT).toBeCloseTo(17 + 10 / 12, 12);
  expect(bar?.second?.girth.known && bar.second.girth.value / FOOT).toBeCloseTo(40 / 12, 12);
  expect(bar?.structure.known && bar.structure.value / POUND).toBeCloseTo(1000, 9);
});

test.each([
  // The beam runs from -12 ft to 12 ft, so F1 is at -4 ft and F2 at 0; the bar of 8 ft about -2 ft begins at -6 ft.
  ["from left to right", [] as [string, string][]],
  // The same beam written from its other end, with the points counted from there.
  [
    "from right to left",
    [
      ["from: {right: -12 ft", "from: {right: 12 ft"],
      ["to: {right: 12 ft", "to: {right: -12 ft"],
      ["F1: {at: 8 ft", "F1: {at: 16 ft"],
    ] as [string, string][],
  ],
])("with the middle of the bar no hang writes its place: %s", (_, hall) => {
  const [bar] = buildOf({
    hall,
    build: [
      ["H1: {point: front-beam.F1, at: 1 ft}", "H1: {point: front-beam.F1}"],
      ["height: 12 ft", "height: 12 ft\n      middle: {right: -2 ft}"],
    ],
  }).bars;
  expect(bar?.hangs.map(({ at }) => at.known && at.value / FOOT)).toEqual([expect.closeTo(2, 9), expect.closeTo(6, 9)]);
});

test("the audience is as far from a face as from where places are measured, and the face upstage of that", () => {
  const { viewing, faces } = buildOf();
  const [face] = faces;
  const from = face && viewing.nearestTo(face);
  expect(from?.known && from.value / FOOT).toBeCloseTo(17, 12);
  const unsaid = buildOf({ build: [["upstage: 2 ft, ", ""]] });
  const [other] = unsaid.faces;
  expect(other && unsaid.viewing.nearestTo(other)).toMatchObject({
    known: false,
    gaps: [{ path: "faces.banner.upstage" }],
  });
});

test("exposure, stage and practice are the venue's", () => {
  const { reader, practice } = buildOf({ hall: [["practice: us", "practice: iec"]] });
  expect([reader.text("exposure"), reader.data("on-stage"), practice]).toEqual(["indoors", true, "iec"]);
});

test("what the survey lacks belongs in the survey, at the place where somebody has to look", () => {
  const build = buildOf({ hall: [["supply: 120 V, breaker: 20 A", "supply: 120 V"]] });
  const found = build.circuits.find(({ name }) => name === "stage-4")?.breaker;
  expect(found).toMatchObject({
    known: false,
    gaps: [{ path: "circuits.stage-4.breaker", file: "venues/ferry-hall.md", place: "rack-a" }],
  });
});

test("and so does the drop of the feeder, which nobody but the hall's electrician knows", () => {
  const { runs } = buildOf({ hall: [[", feeder-drop: 1 %", ""]] });
  const gap = { path: "circuits.stage-4.wiring.feeder-drop", file: "venues/ferry-hall.md" };
  expect(runs.map(({ dropInAll }) => dropInAll)).toContainEqual(
    expect.objectContaining({ known: false, gaps: expect.arrayContaining([expect.objectContaining(gap)]) }),
  );
});

const contradictions = (build: [string, string][], hall: [string, string][] = []) =>
  buildOf({ build, hall }).venue.contradictions.map(({ path, stated }) => `${path} ${stated}`);

test.each([
  ["another breaker", "{stage-5: {breaker: 20 A, serves", ["power.circuits.stage-5.breaker circuits.stage-5.breaker"]],
  ["the same one in other words", "{stage-5: {breaker: 15.0 A, serves", []],
  ["another outlet", "{stage-5: {outlet: nema-5-20, serves", ["power.circuits.stage-5.outlet circuits.stage-5.outlet"]],
  ["a guess", "{stage-5: {breaker: 20 A ?, serves", []],
  ["a bound it is within", "{stage-5: {wiring: {length: at most 60 ft}, serves", []],
  [
    "a bound it is not within",
    "{stage-5: {wiring: {length: at most 40 ft}, serves",
    ["power.circuits.stage-5.wiring.length circuits.stage-5.wiring.length"],
  ],
  // 15.24 m are 50 ft to the last digit; 15.3 m are 50.2 ft, and half of 1 ft is what is written.
  ["a length in metres to the precision written", "{stage-5: {wiring: {length: 15.3 m}, serves", []],
  [
    "a length in metres that is another",
    "{stage-5: {wiring: {length: 15.6 m}, serves",
    ["power.circuits.stage-5.wiring.length circuits.stage-5.wiring.length"],
  ],
])("%s", (_, written, expected) => expect(contradictions([["{stage-5: {serves", written]])).toEqual(expected));

test("the survey's value counts where the build has another", () => {
  const build = buildOf({ build: [["{stage-5: {serves", "{stage-5: {breaker: 20 A, serves"]] });
  expect(build.circuits.find(({ name }) => name === "stage-5")?.breaker).toMatchObject({ value: 15 });
});

test.each([
  [
    "a venue",
    "venue: ferry-hall",
    "venue: fery-hall",
    "venue:5 No survey of a venue `fery-hall` is in the repository.",
  ],
  ["a circuit", "from: stage-4", "from: stage-6", "power.runs.P1.from:13 There is no circuit `stage-6`."],
  [
    "a point",
    "front-beam.F2",
    "front-beam.F9",
    "rigging.bars.header.hangs.H2.point:22 The survey ferry-hall has no point `front-beam.F9`.",
  ],
])("%s that is not surveyed is a mistake at its place", (_, from, to, says) =>
  expect(mistakesOf({ build: [[from, to]] })).toContain(says),
);

test("free text is a venue that nobody surveyed", () => {
  const build = buildOf({ build: [["venue: ferry-hall", "venue: The  Old Pier"]] });
  expect(build.venue.survey).toBeUndefined();
  expect(build.venue.key).toBe("the old pier");
});

test("a survey with a mistake is told at its line, with the nearest key, and judges no build by it", () => {
  const repository = opened({ hall: [["breaker: 100 A", "braker: 100 A"]] });
  const entry = repository.all().documents.find(({ file }) => file === "venues/ferry-hall.md");
  expect(entry).toMatchObject({ verdict: "not ready" });
  expect(entry?.checks[0]).toMatchObject({ at: { path: "supplies.panel-b.braker", line: 16, column: 43 } });
  expect(entry?.checks[0]?.mend).toContain("Write `breaker`.");
});

test("a survey that is replaced is looked at again by the builds that name it alone", () => {
  const other = {
    path: "builds/other.md",
    text: "---\nbuild: other\ntitle: Other\nstatus: draft\nvenue: Elsewhere\n---\n",
  };
  const files = ferry();
  const repository = openRepository({ ...files, documents: [...files.documents, other] }, [], { today: TODAY });
  repository.all();
  const was = new Map(files.documents.map(({ path }) => [path, repository.one(path).entry]));
  const kept = repository.one("builds/other.md").entry;
  const [hall] = files.surveys ?? [];
  repository.replace("venues/ferry-hall.md", hall?.text.replace("breaker: 20 A", "breaker: 30 A"));
  expect(repository.one("builds/other.md").entry).toBe(kept);
  const path = "builds/quay-banner.md";
  expect(repository.one(path).entry).not.toBe(was.get(path));
  expect(repository.model(path).build.circuits.find(({ name }) => name === "stage-4")?.breaker).toMatchObject({
    value: 30,
  });
});

test("a repository without surveys takes any venue", () =>
  expect(mistakesOf({}, { surveys: [] }).filter((each) => each.startsWith("venue:"))).toEqual([]));
