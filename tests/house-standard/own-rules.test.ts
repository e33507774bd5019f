import { type CheckEntry, schemas } from "@plumbmark/core";
import { describe, expect, test } from "vitest";
import { changed, SMALL } from "../documents/repository.js";
import { checksOf, inspected, refusal } from "./inspected.js";

// The small build: four tiles of 500 mm in one row, flown at 11 ft = 3.3528 m; 7.9 kg and 133 W each.
const own = (text: string): string =>
  `own-rules:\n  house.mine:\n    states: The house wants it so.\n    mend: Make it so.\n${text.replace(/^/gmu, "    ")}`;

const checks = (text: string, document = SMALL): readonly CheckEntry[] =>
  checksOf("house.mine", { root: own(text), documents: { "builds/a.md": document } });

const faces = (require: string, when?: string, document = SMALL): readonly CheckEntry[] =>
  checks(`each: faces\nrequire: ${require}${when ? `\nwhen: ${when}` : ""}`, document);

describe("a limit", () => {
  test("is read in any unit and compared in one", () => {
    // 11 ft = 3.3528 m (international foot, 0.3048 m exactly).
    for (const [least, outcome] of [
      ["3.35 m", "holds"],
      ["3352.8 mm", "holds"],
      ["11 ft", "holds"],
      ["3.36 m", "fails"],
      ["11 ft 1 in", "fails"],
    ] as const)
      expect(faces(`{properties: {trim: {minimum: ${least}}}}`)[0]?.outcome, least).toBe(outcome);
  });

  test("is reported as a coded rule's is: measured, allowed, place, mend", () => {
    expect(faces("{properties: {mass: {maximum: 20 kg}}}")).toEqual([
      expect.objectContaining({
        rule: "house.mine",
        level: "shall",
        outcome: "fails",
        // 4 × 7.9 kg, and 4 hanging bars of 2.4 kg.
        measured: { value: 41.2, unit: "kg" },
        allowed: { value: 20, unit: "kg", sense: "at most" },
        mend: "Make it so.",
        at: expect.objectContaining({ path: "faces.header.mass", line: 15 }),
      }),
    ]);
  });

  test("on something not written down is open, and says what to write", () => {
    const [check] = faces("{properties: {spares: {minimum: 1}}}", undefined, changed("    spares: 2\n", ""));
    expect(check).toMatchObject({ outcome: "open", missing: ["faces.header.spares"] });
    expect(check?.mend).toContain("faces.header.spares");
  });

  test("is open when what it is computed from is missing", () => {
    const text = changed("      breaker: 20 A\n", "");
    const [check] = checks("each: circuits\nrequire: {properties: {continuous-rating: {minimum: 10 A}}}", text);
    expect(check?.outcome).toBe("open");
  });

  test.each([
    ["exclusiveMinimum: 3", "holds"],
    ["exclusiveMinimum: 4", "fails"],
    ["exclusiveMaximum: 4", "fails"],
    ["exclusiveMaximum: 5", "holds"],
  ])("%s of four panels %s", (limit, outcome) =>
    expect(faces(`{properties: {panel-count: {${limit}}}}`)[0]?.outcome).toBe(outcome),
  );
});

test("two limits of one value are one check", () => {
  const [check, ...others] = faces("{properties: {trim: {minimum: 2 m, maximum: 3 m}}}");
  expect(others).toEqual([]);
  expect(check).toMatchObject({ outcome: "fails", allowed: { least: 2, most: 3, unit: "m", sense: "within" } });
});

test.each([
  // 500 lb × 0.45359237 kg/lb × 9.80665 m/s² = 2224.1 N, exact factors.
  ["500 lb", "2.2 kN", "holds"],
  ["500 lb", "2.3 kN", "fails"],
  ["2.2 kN", "500 lb", "fails"],
  ["2.3 kN", "500 lb", "holds"],
])("a rating of %s is to a limit of %s as mass to force: %s", (rating, least, outcome) => {
  const text = changed("structure: 500 lb", `structure: ${rating}`);
  const [check] = checks(`each: hangs\nrequire: {properties: {structure: {minimum: ${least}}}}`, text);
  expect(check?.outcome).toBe(outcome);
});

describe("what it demands", () => {
  test("stands under a place of its own for each", () => {
    const found = faces(
      "{properties: {spares: {minimum: 3}, trim: {minimum: 4 m}, support: {const: wall}}, required: [lot]}",
    );
    expect(found.map(({ at, outcome }) => [at.path, outcome])).toEqual([
      ["faces.header.support", "fails"],
      ["faces.header.trim", "fails"],
      ["faces.header.spares", "fails"],
    ]);
    for (const { says } of found) expect(says).toContain("The house wants it so.");
  });

  test("of what is not there is open when it has to be there", () => {
    const [check] = faces("{required: [omit]}");
    expect(check).toMatchObject({ outcome: "open", at: expect.objectContaining({ path: "faces.header.omit" }) });
    expect(faces("{required: [lot]}")[0]?.outcome).toBe("holds");
  });

  test.each([
    ["{anyOf: [{properties: {support: {const: wall}}}, {properties: {trim: {minimum: 3 m}}}]}", "holds"],
    ["{anyOf: [{properties: {support: {const: wall}}}, {properties: {trim: {minimum: 4 m}}}]}", "fails"],
    ["{not: {properties: {support: {const: flown}}}}", "fails"],
    ["{anyOf: [{properties: {support: {const: wall}}}, {properties: {height-above: {minimum: 3 m}}}]}", "open"],
    ["{if: {properties: {support: {const: flown}}}, then: {properties: {spares: {minimum: 3}}}}", "fails"],
  ])("by branches, %s: %s", (require, outcome) =>
    expect(faces(require).map((each) => each.outcome)).toEqual([outcome]),
  );

  test("can be asked of the whole build, of hangs and of what is nested", () => {
    expect(
      checks("each: build\nrequire: {properties: {audience: {properties: {nearest: {minimum: 10 ft}}}}}")[0],
    ).toMatchObject({
      outcome: "holds",
      at: expect.objectContaining({ path: "audience.nearest" }),
    });
    expect(
      checks("each: hangs\nrequire: {properties: {structure: {minimum: 600 lb}}}").map(({ outcome }) => outcome),
    ).toEqual(["fails", "fails"]);
  });
});

describe("when it applies", () => {
  const spares = "{properties: {spares: {minimum: 3}}}";
  test.each([
    ["{properties: {panel-count: {minimum: 5}}}", []],
    ["{properties: {panel-count: {minimum: 4}}}", ["fails"]],
    ["{properties: {base: {properties: {depth: {minimum: 1 m}}}}, required: [base]}", []],
    ["{properties: {height-above: {maximum: 2 m}}}", ["open"]],
  ])("%s", (when, outcomes) => expect(faces(spares, when).map(({ outcome }) => outcome)).toEqual(outcomes));

  test("cannot be told, but it is met in any case", () =>
    expect(
      faces("{properties: {spares: {minimum: 2}}}", "{properties: {height-above: {maximum: 2 m}}}")[0]?.outcome,
    ).toBe("holds"));
});

describe("a schema that cannot match is refused with its place", () => {
  const face = (require: string): string => refusal({ root: own(`each: faces\nrequire: ${require}`) });
  test.each([
    [
      "{properties: {panel-cout: {minimum: 2}}}",
      /^house-standard\.yaml:7:28: Nothing called `panel-cout`.*a face\. Did you mean `panel-count`/u,
    ],
    ["{required: [sparse]}", /Nothing called `sparse`.*Did you mean `spares`/u],
    ["{properties: {trim: {minimum: 3}}}", /limit of `trim` of a face is the bare number `3`\. Write a length in m/u],
    ["{properties: {trim: {minimum: 3 kg}}}", /`3 kg`, which is a mass\. Write a length/u],
    ["{properties: {spares: {minimum: 2 m}}}", /limit of `spares` of a face is `2 m`.*number without a unit/u],
    [
      "{properties: {trim: {type: string}}}",
      /`trim` of a face is never of the type `string`: it is a length, compared as a number/u,
    ],
    ["{properties: {support: {minimum: 2}}}", /`support` of a face is a text, so `minimum` can never decide/u],
    ["{properties: {support: {const: flow}}}", /never `flow`\. Did you mean `flown`/u],
    ["{properties: {support: {enum: [flown, hung]}}}", /never `hung`\. It may be/u],
    ["{properties: {trim: {minimun: 3 m}}}", /`minimun` is no keyword.*Did you mean `minimum`/u],
    ["{properties: {trim: {minimum: 4 m, maximum: 3 m}}}", /both above the lower and below the upper/u],
    ["{properties: {trim: {properties: {depth: {minimum: 1}}}}}", /Nothing called `depth`.*a length, compared/u],
    ["{properties: {lot: {pattern: '['}}}", /pattern `\[` cannot be read/u],
    ["{properties: {trim: 3 m}}", /The schema of `trim` of a face is `3 m`/u],
    ["{$ref: '#/x'}", /`\$ref` is no keyword/u],
  ])("%s", (require, says) => expect(face(require)).toMatch(says));

  test("a collection there is not", () =>
    expect(refusal({ root: own("each: facs\nrequire: {}") })).toMatch(/^house-standard\.yaml:6:11: .*Write `faces`/u));

  test("a name that another rule has", () => {
    const root = own("each: faces\nrequire: {required: [lot]}").replace("house.mine", "panels.spares");
    expect(refusal({ root })).toMatch(
      /^house-standard\.yaml:3:3: There is more than one rule of the name `panels\.spares`/u,
    );
  });
});

test("every value that is computed or written can be named, by its kind", () => {
  // A name from each collection, with a limit that only its kind can have (UCUM keeps A, V, m, kg, px apart).
  const named = [
    "each: circuits\nrequire: {properties: {current: {maximum: 16 A}, wiring: {properties: {length: {maximum: 200 ft}}}}}",
    "each: runs\nrequire: {properties: {voltage-at-end: {minimum: 90 V}}}",
    "each: chains\nrequire: {properties: {panels: {maximum: 40}}}",
    "each: bars\nrequire: {properties: {load: {maximum: 900 kg}}}",
  ];
  for (const text of named) expect(checks(text).map(({ outcome }) => outcome)).not.toContain("fails");
  expect(schemas.houseStandardSchema).toBeDefined();
  expect(inspected({ root: own(named[0] as string) }).documents[0]?.verdict).toBe("ready");
});
