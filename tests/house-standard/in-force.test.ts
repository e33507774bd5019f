import { describe, expect, test } from "vitest";
import { changed, SMALL } from "../documents/repository.js";
import { checksOf, inspected, refusal } from "./inspected.js";

// The small build: four tiles flown at 11 ft (3.3528 m, 1 ft = 0.3048 m exactly) on one 20 A circuit.
const levelsOf = (rule: string, root: string): readonly string[] => [
  ...new Set(checksOf(rule, { root }).map(({ level }) => level)),
];

describe("levels", () => {
  test("a topic sets every rule of it, and a rule goes before its topic", () => {
    const root = "topics: {power: {level: note}}\nrequirements: {power.circuit-load: {level: should}}";
    expect(levelsOf("power.run-current", root)).toEqual(["note"]);
    expect(levelsOf("power.circuit-load", root)).toEqual(["should"]);
  });

  test("a rule of a topic that is not applied can be applied by itself", () => {
    const root = "topics: {power: {level: none}}\nrequirements: {power.circuit-load: {level: shall}}";
    expect(levelsOf("power.run-current", root)).toEqual([]);
    expect(levelsOf("power.circuit-load", root)).toEqual(["shall"]);
  });
});

describe("faces held in different ways", () => {
  const STACKED = changed("    support: flown\n    trim: 11 ft\n", "    support: stacked\n    height-above: 3 ft\n");
  const spares = "requirements: {panels.spares: {level: note, least: 1, flown: {level: shall, least: 3}}}";

  test("what is flown is judged by its own settings and level, along with what serves it", () => {
    const [flown] = checksOf("panels.spares", { root: spares });
    expect(flown).toMatchObject({ level: "shall", outcome: "fails", allowed: { value: 3 } });
    const wired = "requirements: {power.circuit-load: {share: 80 %, flown: {share: 50 %}}}";
    expect(checksOf("power.circuit-load", { root: wired })[0]?.allowed?.value).toBe(10);
  });

  test("what stands is not", () => {
    const documents = { "builds/a.md": STACKED };
    expect(checksOf("panels.spares", { root: spares, documents })[0]).toMatchObject({
      level: "note",
      outcome: "holds",
      allowed: { value: 1 },
    });
  });

  const SECOND =
    "  strip:\n    panel: tile-500-p3.1\n    columns: 2\n    rows: 1\n    support: stacked\n    height-above: 3 ft\n    spares: 2\n    lot: lot-2431\naudience:";
  const BOTH = changed("panels: header A1..A4", "panels: header A1..A4", changed("audience:", SECOND));
  test("each face by itself, where a build has both", () => {
    const found = checksOf("panels.spares", { root: spares, documents: { "builds/a.md": BOTH } });
    expect(found.map(({ at, level, allowed }) => [at.path, level, allowed?.value])).toEqual([
      ["faces.header", "shall", 3],
      ["faces.strip", "note", 1],
    ]);
  });

  test("the strictest goes for what serves both", () => {
    const root = "requirements: {document.sections: {level: note, stacked: {level: should}, flown: {level: shall}}}";
    const found = checksOf("document.sections", { root, documents: { "builds/a.md": BOTH } });
    expect(new Set(found.map(({ level }) => level))).toEqual(new Set(["shall"]));
  });

  test("a topic can be stricter for one of them, too", () => {
    const root = "topics: {panels: {level: note, flown: {level: shall}}}";
    const found = checksOf("panels.spares", { root, documents: { "builds/a.md": BOTH } });
    expect(found.map(({ level }) => level)).toEqual(["shall", "note"]);
  });
});

describe("a house standard that names what there is not", () => {
  test.each([
    [
      "requirements: {power.circut-load: {level: none}}",
      /^house-standard\.yaml:2:16: .*Did you mean `power\.circuit-load`/u,
    ],
    ["topics: {powr: {level: none}}", /^house-standard\.yaml:2:10: There is no topic `powr`\. Did you mean `power`/u],
    ["rules:\n  power.circuit-load: {shre: 75 %}", /^house-standard\.yaml:3:24: .*Did you mean `share`/u],
    ["rules:\n  power.circuit-load: {share: 3 m}", /:3:24: .*share.* is `3 m`, which is a length\. Write/u],
    ["rules:\n  power.circuit-load: {flown: {shre: 75 %}}", /:3:32: .*Did you mean `share`/u],
    ["rules:\n  panels.spares: {least: two}", /:3:19: .*`two`\. Write a number/u],
    ["rules:\n  panels.spares: {hung: {least: 2}}", /no setting `hung`/u],
    ["allows: [viewing.pich]", /:2:10: .*Did you mean `viewing\.pitch`/u],
    ["editon: 2027", /:2:1: .*Write `edition`/u],
    ["in-force: next year", /in-force.*A day such as 2027-01-01/u],
    ["topics: {power: {levl: shall}}", /Write `level`/u],
    ["topics: {power: {level: must}}", /It may be `shall`, `should`, `note` or `none`/u],
  ])("%s", (root, says) => expect(refusal({ root })).toMatch(says));
});

test("the record says by which house standards, with their editions", () => {
  const record = inspected({
    root: 'edition: 2027\nin-force: "2027-01-01"',
    folders: { quay: "edition: spring" },
    documents: { "builds/a.md": SMALL, "quay/builds/b.md": changed("build: small-header", "build: other") },
  });
  expect(record.standard).toBe("House, 2027 edition");
  expect(record.standards).toEqual([
    { name: "House, 2027 edition", file: "house-standard.yaml", edition: "2027", "in-force": "2027-01-01" },
    { name: "House of quay, spring edition", file: "quay/house-standard.yaml", folder: "quay", edition: "spring" },
  ]);
  expect(record.documents.map(({ file, standards }) => [file, standards])).toEqual([
    ["builds/a.md", ["house-standard.yaml"]],
    ["quay/builds/b.md", ["house-standard.yaml", "quay/house-standard.yaml"]],
  ]);
});
