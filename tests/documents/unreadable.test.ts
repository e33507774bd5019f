import { type CheckEntry, type DocumentEntry, openRepository } from "@plumbmark/core";
import { describe, expect, test } from "vitest";
import { changed, inspectText, onlyRules, SMALL, starter, TODAY } from "./repository.js";

// What may be left out counts as nothing where it is left out. Written so that nobody can read it, or as less than
// nothing, it is not nothing: what rests on it cannot be told.

const WIRING = "{conductor: 12 AWG, length: 30 ft, feeder-drop: 1 %}";

/** Where a quantity is written, and the rules that rest on it. */
const CASES: readonly (readonly [what: string, write: (value: string) => string, rules: readonly string[]])[] = [
  [
    "other load of a circuit",
    (value) => changed("      other-load: none\n", `      other-load: ${value}\n      other-inrush: 1 A\n`),
    ["power.circuit-load", "power.voltage-drop"],
  ],
  [
    "other load of a bar",
    (value) => changed("      length: 8 ft\n", `      length: 8 ft\n      other-load: ${value}\n`),
    ["rigging.bar-strength", "rigging.point-load", "rigging.suspended-weight"],
  ],
  [
    "what a breaker rides through",
    (value) => changed("rides-through: 200 A", `rides-through: ${value}`),
    ["power.inrush"],
  ],
  ["the drop of a feeder", (value) => changed("feeder-drop: 1 %", `feeder-drop: ${value}`), ["power.voltage-drop"]],
  [
    "what the structure is stated to carry",
    (value) => changed("      length: 8 ft\n", `      length: 8 ft\n      structure: ${value}\n`),
    ["rigging.suspended-weight"],
  ],
  [
    "a piece that is lifted",
    (value) => changed("lifting: {", `lifting: {pieces: {rack: ${value}}, `),
    ["rigging.lift"],
  ],
];

/** Warmth and angles may be below nothing, and sizes have a message of their own. */
const UNREADABLE: typeof CASES = [
  ...CASES,
  [
    "warmth around the wiring",
    (value) => changed(WIRING, `${WIRING.slice(0, -1)}, ambient: ${value}}`),
    ["power.cord-ampacity"],
  ],
  [
    "warmth around the cords",
    (value) => changed("  circuits:\n", `  ambient: ${value}\n  circuits:\n`),
    ["power.cord-ampacity"],
  ],
  [
    "the reach at the end of a lift",
    (value) => changed("lifting: {", `lifting: {reach-end: ${value}, `),
    ["rigging.lift"],
  ],
  [
    "a size on the raster",
    (value) => changed("    header: 0,0", `    header: {at: "0,0", scaled: ${value}}`),
    ["picture.placed"],
  ],
  [
    "how much of a cable hangs",
    (value) => changed("length: 35 ft}", `length: 35 ft, hangs: ${value}}`),
    ["rigging.bar-strength", "rigging.suspended-weight"],
  ],
  // These are no quantities.
  [
    "how many circuits are laid together",
    (value) => changed(WIRING, `${WIRING.slice(0, -1)}, together: ${value}}`),
    ["power.cord-ampacity"],
  ],
  ["the curve of a breaker", (value) => changed("rides-through: 200 A", `curve: ${value}`), ["power.inrush"]],
];

const of = ({ checks }: DocumentEntry, rule: string): readonly CheckEntry[] =>
  checks.filter((check) => check.rule === rule);

/** A text inspected by these rules and by those of what stands in the file. */
const inspected = (text: string, ids: readonly string[]): DocumentEntry =>
  inspectText(text, { rules: [...ids, "document.front-matter"], turns: false });

/** Rules of which no check is open. */
const told = (document: DocumentEntry, rules: readonly string[]): readonly string[] =>
  rules.filter((rule) => !of(document, rule).some(({ outcome }) => outcome === "open"));

test("none of them is open while everything is written", () => {
  const rules = UNREADABLE.flatMap(([, , names]) => names);
  const whole = inspected(SMALL, rules);
  expect(told(whole, rules)).toEqual(rules);
});

describe.each(UNREADABLE)("%s", (_, write, rules) => {
  test.each(["foo", "[1]", '"12 parsecs"'])("written as %s is no nothing: what rests on it is open", (value) => {
    const document = inspected(write(value), rules);
    expect(document.verdict).toBe("not ready");
    expect(of(document, "document.front-matter").some(({ outcome }) => outcome === "fails")).toBe(true);
    expect(told(document, rules)).toEqual([]);
  });
});

const NEGATIVE: Readonly<Record<string, string>> = {
  "other load of a circuit": "-500 VA",
  "other load of a bar": "-100 kg",
  "what a breaker rides through": "-200 A",
  "the drop of a feeder": "-1 %",
  "what the structure is stated to carry": "-100 lb",
  "a piece that is lifted": "-3 kg",
};

test.each(CASES)("%s below nothing is refused, and what rests on it is open", (what, write, rules) => {
  const document = inspected(write(NEGATIVE[what] as string), rules);
  const refused = of(document, "document.front-matter").filter(({ says }) => says.includes("less than nothing"));
  expect(refused.map(({ outcome, mend }) => [outcome, mend])).toEqual([["fails", "Write a value of 0 or more."]]);
  expect(told(document, rules)).toEqual([]);
});

test("frost, a turn to the left and a place to the left of a bar's end are no mistakes", () => {
  for (const text of [
    changed("  circuits:\n", "  ambient: -5 degC\n  circuits:\n"),
    changed("turn: 0 deg", "turn: -10 deg"),
  ])
    expect(of(inspected(text, []), "document.front-matter").filter(({ outcome }) => outcome === "fails")).toEqual([]);
});

// A part of the catalogue, where a smaller limit of the maker could be what nobody can read.
test.each([
  ["through-current: 16 A", "through-current: foo", "power.run-current", "through current"],
  ["mass: 7.9 kg", "mass: -7.9 kg", "rigging.bar-strength", "mass"],
  ["maximum: 133 W", "maximum: 130 parsecs", "power.circuit-load", "maximum power"],
])("a part with %s written as %s: what rests on it is open, and says why", (from, to, rule, what) => {
  const parts = starter().parts.map((file) => ({ ...file, text: file.text.replace(from, to) }));
  expect(parts.map(({ text }) => text)).not.toEqual(starter().parts.map(({ text }) => text));
  const documents = [{ path: "builds/1.md", text: SMALL }];
  const options = { today: TODAY, every: true };
  const [document] = openRepository({ ...starter(), parts, documents }, onlyRules([rule]), options).all().documents;
  expect(document?.verdict).toBe("not ready");
  const open = of(document as DocumentEntry, rule).filter(({ outcome }) => outcome === "open");
  expect(open.map(({ says }) => says)).toEqual([
    `The part tile-500-p3.1 (parts/panels.yaml): the ${what} cannot be read as it is written.`,
  ]);
});

// Of a face that may be over people the friction plugs are looked at, whatever a height that nobody can read is.
test("a height that cannot be read counts as overhead", () => {
  const text = (height: string): string =>
    changed("    support: flown\n    trim: 11 ft\n", `    support: wall\n${height}`);
  const looked = (height: string): number =>
    of(inspected(text(height), ["connectors.locking-overhead"]), "connectors.locking-overhead").length;
  expect(looked("    height-above: foo\n")).toBeGreaterThan(0);
  expect(looked("    height-above: foo\n")).toBe(looked("    height-above: 12 ft\n"));
  expect(looked("    height-above: 1 ft\n")).toBe(0);
});
