import { openRepository, type RepositoryFiles, workedValues } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import { TODAY } from "./repository.js";

// Invented tiles of round figures, so that everything can be worked out in the head.
const PARTS = `
tall: {kind: panel, size: 500 mm x 1000 mm, pixels: 120 x 240, mass: 12 kg, power: {maximum: 190 W, factor: 0.95, leakage: 1 mA, inrush: 10 A}, supply: 100 V to 240 V, chain-limit: 20}
tall-2: {kind: panel, size: 500 mm x 1000 mm, pixels: 120 x 240, mass: 10 kg, power: {maximum: 95 W, factor: 0.95, leakage: 2 mA, inrush: 20 A}, supply: 200 V to 240 V, chain-limit: 8}
short: {kind: panel, size: 500 mm x 500 mm, pixels: 120 x 120, mass: 6 kg, power: {maximum: 95 W, factor: 0.95}}
`;

const filesOf = (face: string): RepositoryFiles => ({
  parts: [{ path: "parts/tiles.yaml", text: PARTS }],
  documents: [
    {
      path: "builds/wall.md",
      text: `---
build: wall
title: Wall
status: draft
practice: iec
faces:
  wall: {panel: tall, columns: 4, rows: 2, support: wall, ${face}}
power:
  circuits:
    c1: {supply: 230 V, breaker: 16 A, residual: 30 mA}
  runs:
    P1: {from: c1, panels: "wall A1..A4, B4..B1"}
data:
  chains:
    D1: {port: 1, panels: "wall A1..A4, B4..B1"}
---
`,
    },
  ],
});

const valuesOf = (face: string) => {
  const values = workedValues(openRepository(filesOf(face), [], { today: TODAY }).model("builds/wall.md"));
  return (path: string) => values.get(path)?.value;
};
const checksOf = (face: string) =>
  openRepository(filesOf(face), rules, { today: TODAY, every: true })
    .all()
    .documents.flatMap(({ checks }) => checks);

describe("a face whose panels lie on their side", () => {
  const upright = valuesOf("rotated: 0");
  test.each([
    [90, 4, 1, 960, 240],
    [270, 4, 1, 960, 240],
    [180, 2, 2, 480, 480],
  ])("turned by %s°", (turn, width, height, wide, high) => {
    const value = valuesOf(`rotated: ${turn}`);
    expect(value("faces.wall.width")).toBeCloseTo(width, 9);
    expect(value("faces.wall.height")).toBeCloseTo(height, 9);
    expect([value("faces.wall.pixels-wide"), value("faces.wall.pixels-high")]).toEqual([wide, high]);
  });
  test("weighs and draws the same, and its pitch is the same", () => {
    const turned = valuesOf("rotated: 90");
    for (const path of ["faces.wall.mass", "faces.wall.pitch", "power.circuits.c1.load", "data.chains.D1.pixels"])
      expect(turned(path)).toBe(upright(path));
  });
});

describe("a face with other panels in some cells", () => {
  const mixed = 'other-panels: {tall-2: "A1..A2"}';
  const value = valuesOf(mixed);
  test("each panel counts with its own mass, power and pixels", () => {
    expect(value("faces.wall.mass")).toBeCloseTo(6 * 12 + 2 * 10, 9);
    expect(value("faces.wall.power-maximum")).toBeCloseTo(6 * 190 + 2 * 95, 9);
    expect(value("power.circuits.c1.load")).toBeCloseTo(6 * 200 + 2 * 100, 9);
    expect(value("data.chains.D1.pixels")).toBe(8 * 120 * 240);
  });
  test("the least limit, the highest lower voltage and the sum of the leakage count", () => {
    const checks = checksOf(mixed);
    const of = (rule: string) => checks.filter((check) => check.rule === rule);
    expect(of("data.chain-length")[0]?.allowed?.value).toBe(8);
    expect(of("power.leakage")[0]?.measured?.value).toBeCloseTo(0.001 * (6 + 2 * 2), 12);
    const highest = of("power.supply-range").filter(({ allowed }) => allowed?.sense === "at most");
    expect(highest.map(({ outcome }) => outcome)).toEqual(["holds", "holds"]);
  });
  test("of another size: what follows from one size is missing with its reason, never wrong", () => {
    const unlike = valuesOf('other-panels: {short: "A1"}');
    for (const path of ["faces.wall.height", "faces.wall.pixels-high"]) expect(unlike(path)).toBeUndefined();
    expect(unlike("faces.wall.width")).toBeCloseTo(2, 9);
    expect(unlike("faces.wall.mass")).toBeCloseTo(7 * 12 + 6, 9);
  });
  test.each([
    ["a part that is not in the catalogue", 'other-panels: {tall-3: "A1"}', "tall-3"],
    ["a cell the face does not have", 'other-panels: {tall-2: "A9"}', "A9"],
    ["cells that cannot be read", 'other-panels: {tall-2: "somewhere"}', "somewhere"],
    ["a cell named twice", 'other-panels: {tall-2: "A1", short: "A1"}', "A1"],
  ])("%s is a mistake with its place", (_, face, told) => {
    const mistakes = checksOf(face).filter(({ rule, outcome }) => rule === "document.parts" && outcome === "fails");
    expect(mistakes.some(({ says }) => says.includes(told))).toBe(true);
  });
});
