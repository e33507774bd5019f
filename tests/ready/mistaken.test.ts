import { readdirSync, readFileSync } from "node:fs";
import { openRepository, type RepositoryFiles, type SourceFile } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { starterRepository } from "@plumbmark/starter";
import { describe, expect, test } from "vitest";
import { approvedAsTheyAre, TODAY } from "../documents/repository.js";

const one = (path: string): SourceFile => ({ path, text: readFileSync(`${starterRepository}/${path}`, "utf8") });
const folder = (name: string): readonly SourceFile[] =>
  readdirSync(`${starterRepository}/${name}`)
    .sort()
    .map((file) => one(`${name}/${file}`));
const BANNER = "builds/over-stage-banner.md";
const HEADER = "builds/harbour-header.md";
const standard = one("house-standard.yaml");
const STARTER: RepositoryFiles = {
  houseStandard: { ...standard, text: standard.text.replace(/^rules-from:.*\n/mu, "") },
  parts: folder("parts"),
  stock: one("stock.yaml"),
  surveys: folder("venues"),
  papers: readdirSync(`${starterRepository}/letters`).map((name) => `letters/${name}`),
  documents: [one(BANNER), one(HEADER)],
};

/** A file of the starter with words in place of others, and what the build comes to that rests on it. */
function judged(path: string, from: string | RegExp, to: string, document = BANNER) {
  const edited = (file: SourceFile): SourceFile => {
    if (file.path !== path) return file;
    const text = file.text.replace(from, to);
    if (text === file.text) throw new Error(`${path} has no ${from}`);
    return { path, text };
  };
  const files = {
    ...STARTER,
    parts: STARTER.parts.map(edited),
    stock: edited(STARTER.stock as SourceFile),
    surveys: (STARTER.surveys ?? []).map(edited),
    documents: STARTER.documents.map(edited),
  };
  const { entry } = openRepository(approvedAsTheyAre(files), rules, { today: TODAY, every: true, turns: false }).one(
    document,
  );
  const of = (rule: string): readonly string[] => [
    ...new Set(entry.checks.filter((check) => check.rule === rule).map(({ outcome }) => outcome)),
  ];
  return { verdict: entry.verdict, parts: of("document.parts"), of };
}

const [PANELS, RIGGING] = ["parts/panels.yaml", "parts/rigging.yaml"];
const [HALL, VARNHOLT] = ["venues/marlow-quay-hall.md", "venues/varnholt-hall.md"];
const shackle = (more: string): readonly [string, string, string] => [
  RIGGING,
  "shackle-3-8: {kind: hardware, ",
  `shackle-3-8: {kind: hardware, ${more}, `,
];

// Common practice, no source: nothing is built on a data sheet or a survey in which something cannot be read.
describe("a build rests on no part and no survey that is written with a mistake", () => {
  test("without one the starter's banner is ready", () => {
    expect(judged(BANNER, "revision: 4", "revision: 4 # the same")).toMatchObject({
      verdict: "ready",
      parts: ["holds"],
    });
  });

  test.each([
    [
      "a mass that stands twice, the lighter first",
      PANELS,
      "  depth-bits: 14 bit",
      "  mass: 2 kg\n  depth-bits: 14 bit",
    ],
    ["a WLL that stands twice, of a part that only an assembly names", ...shackle("wll: 2000 lb")],
    ["a key nobody knows", ...shackle("colour: red")],
    ["a multiple that is less than nothing", ...shackle("dynamic: -1")],
    ["a text where true or false belongs", ...shackle('secondary: "no"')],
    ["a breaker that stands twice in the survey", HALL, "    breaker: 20 A", "    breaker: 20 A\n    breaker: 40 A"],
    ["a word of the survey that is none", HALL, "control: constant", "control: dimer"],
  ])("%s", (_, path, from, to) => {
    const { verdict, parts } = judged(path, from, to);
    expect(parts).toEqual(["open"]);
    expect(verdict).toBe("not ready");
  });

  test("a type of the survey in small letters is not taken for one that protects", () => {
    const { verdict, parts, of } = judged(VARNHOLT, "residual-type: A", "residual-type: ac", HEADER);
    expect([verdict, parts, of("power.residual-type")]).toEqual(["not ready", ["open"], ["open"]]);
  });

  test("a part that stands in two files is open, too", () => {
    const twice = { path: "parts/z.yaml", text: "shackle-3-8: {kind: hardware, wll: 9000 lb}\n" };
    const files = approvedAsTheyAre({ ...STARTER, parts: [...STARTER.parts, twice] });
    const { entry } = openRepository(files, rules, { today: TODAY, every: true, turns: false }).one(BANNER);
    expect(entry.checks.filter(({ rule }) => rule === "document.parts").map(({ outcome }) => outcome)).toEqual([
      "open",
    ]);
  });

  test.each([
    ["a key nobody knows, in the lot it takes", "lot-2431: {", "lot-2431: {colour: red, ", "not ready"],
    ["days out that are no number", "lots:", "days: {out: one, back: 1}\nlots:", "not ready"],
    ["a key nobody knows, in a lot it does not take", "lot-2507: {", "lot-2507: {colour: red, ", "ready"],
  ])("of the stock list: %s", (_, from, to, verdict) => {
    const found = judged("stock.yaml", from, to);
    expect(found.verdict).toBe(verdict);
    expect(found.parts).toContain(verdict === "ready" ? "holds" : "open");
  });

  test("what a part costs is no matter of it", () => {
    expect(
      judged(RIGGING, "shackle-3-8: {kind: hardware, ", "shackle-3-8: {kind: hardware, price: {each: twelve}, ").of(
        "rigging.point-load",
      ),
    ).toEqual(["holds"]);
  });
});

describe("a plain number may be a guess or a bound", () => {
  test.each([
    ["a power factor, as a guess", PANELS, "factor: 0.95", "factor: 0.95 ?", "power.circuit-load", "open"],
    [
      "a power factor, at least: it turns into at most 1",
      PANELS,
      "factor: 0.95",
      "factor: at least 0.95",
      "power.circuit-load",
      "holds",
    ],
    [
      "a power factor, at most: it may be next to nothing",
      PANELS,
      "factor: 0.95",
      "factor: at most 0.95",
      "power.circuit-load",
      "open",
    ],
    ["a multiple of a hoist, as a guess", ...shackle("dynamic: 1.25 ?"), "rigging.hoist", "open"],
    [
      "a multiple of a hoist, at most 2: it holds from 1 to 2",
      ...shackle("dynamic: at most 2"),
      "rigging.hoist",
      "holds",
    ],
  ])("%s", (_, path, from, to, rule, outcome) => {
    const { parts, of } = judged(path, from, to);
    expect(parts).toEqual(["holds"]);
    // Circuits without a panel on them hold in any case.
    expect(of(rule).filter((each) => outcome === "holds" || each !== "holds")).toEqual([outcome]);
  });
});

describe("a text with a question mark at its end is a guess", () => {
  test.each([
    ["a marking", RIGGING, 'marking: "TF 1000 LB"', 'marking: "TF 1000 LB ?"'],
    ["a certificate", RIGGING, "certificate: shop file R-014", "certificate: shop file R-014 ?"],
  ])("%s", (_, path, from, to) => {
    expect(judged(path, from, to)).toMatchObject({ verdict: "not ready" });
    expect(judged(path, from, to).of("rigging.marked")).toContain("open");
  });
});
