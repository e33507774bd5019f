import { about, atMost, is, open, quantity, type Rule, repositoryRule, rule, within } from "@plumbmark/kit";
import { type Case, checksOf, trials, tryOut } from "@plumbmark/kit/tryout";
import { describe, expect, test } from "vitest";

// What is tried out here is the trying out: a rule that keeps its word passes, one that does not is told apart.

/** The international pound is 0.45359237 kg exactly; ten panels of 7.9 kg weigh 79 kg, which is 174.17 lb. */
const parts = `tile:
  kind: panel
  size: 500 mm x 500 mm
  pixels: 160 x 160
  mass: 7.9 kg
  power: {maximum: 133 W}
`;

const wall = (columns: number, more = ""): string =>
  `---\nbuild: wall-${columns}\ntitle: Wall\nstatus: draft\nfaces:\n  wall: {panel: tile, columns: ${columns}, rows: 1, support: wall${more}}\n---\n\n# Wall\n`;

const light = rule({
  id: "house.light",
  states: "A face weighs no more than two people carry.",
  level: "shall",
  why: "The van has no lift.",
  judged: "The mass of the face against the limit of the house.",
  sources: ["house"],
  settings: { most: { us: 50, iec: 50, kind: "mass", describe: "most mass of a face" } },
  *checks({ build, limits }) {
    for (const face of build.faces)
      yield atMost(face, {
        measured: face.mass,
        allowed: limits.most,
        says: ({ measured, allowed }) => `${face.label} weighs ${measured}; ${allowed} is the most.`,
        mend: "Divide the face.",
      });
  },
});

const cases: readonly Case[] = [
  { name: "a light one", documents: wall(6), expects: [{ outcome: "holds", measured: "47.4 kg", allowed: "50 kg" }] },
  { name: "a heavy one", documents: wall(10), expects: [{ outcome: "fails", measured: "79 kg", at: "faces.wall" }] },
  {
    name: "one of unknown panels",
    documents: wall(6),
    parts: parts.replace("  mass: 7.9 kg\n", ""),
    expects: [{ outcome: "open", missing: ["tile.mass"] }],
  },
];

const around = { parts };
const broken = (change: Partial<Record<keyof Rule, unknown>>): Rule => ({ ...light, ...change }) as Rule;

test("a rule that keeps its contract and its cases passes", () => {
  expect(trials(light, cases, around).map(({ name }) => name)).toEqual([
    "keeps the contract",
    ...cases.map(({ name }) => name),
  ]);
  tryOut(light, cases, around);
});

test("a pound is a pound: what is expected may be written in any unit of its kind", () => {
  tryOut(light, [{ ...(cases[1] as Case), expects: [{ outcome: "fails", measured: "174.17 lb" }] }], {
    ...around,
    never: ["holds", "open"],
  });
});

describe("a rule that does not come to what is expected is told", () => {
  const wrong: readonly (readonly [what: string, Case, RegExp])[] = [
    [
      "another figure",
      { ...(cases[0] as Case), expects: [{ outcome: "holds", measured: "47.3 kg" }] },
      /47\.3 kg[\s\S]*47\.4 kg/u,
    ],
    ["another outcome", { ...(cases[0] as Case), expects: "fails" }, /at least one check fails[\s\S]*holds/u],
    ["a failure nobody expects", { ...(cases[1] as Case), expects: [] }, /not expected[\s\S]*79 kg/u],
    ["an unknown part", { ...(cases[0] as Case), parts: "" }, /mistakes[\s\S]*tile/u],
    ["a slip in the document", { ...(cases[0] as Case), documents: wall(6, ", colour: red") }, /colour/u],
  ];
  test.each(wrong)("%s", (_, each, says) => expect(() => tryOut(light, [...cases, each], around)).toThrow(says));
});

describe("a contract that is not kept is told", () => {
  const wrong: readonly (readonly [what: string, Rule, RegExp])[] = [
    ["an id of one word", broken({ id: "light" }), /id is not/u],
    ["no reason", broken({ why: " " }), /no `why`/u],
    ["no account of how it is judged", broken({ judged: undefined }), /no `judged`/u],
    ["an unknown source", broken({ sources: ["hearsay"] }), /`hearsay` is not known/u],
    ["no source", broken({ sources: [] }), /no source/u],
    ["an unknown level", broken({ level: "must" }), /level/u],
    ["a setting of two types", broken({ settings: { most: { us: 1, iec: "1", describe: "x" } } }), /of one type/u],
    [
      "a default its own schema refuses",
      broken({ settings: { most: { us: 1, iec: 1, describe: "x", schema: { minimum: 2 } } } }),
      /does not meet its schema/u,
    ],
    [
      "a schema that is none",
      broken({ settings: { most: { us: 1, iec: 1, describe: "x", schema: { type: "sausage" } } } }),
      /cannot be used/u,
    ],
  ];
  test.each(wrong)("%s", (_, each, says) => expect(() => trials(each, cases)[0]?.run()).toThrow(says));

  test("no case that is open", () =>
    expect(() => tryOut(light, cases.slice(0, 2), around)).toThrow(/no case that is open/u));
});

describe("a rule that does what no rule may is told", () => {
  const yields = (what: unknown): Rule => broken({ checks: () => [what] as never });
  const wrong: readonly (readonly [what: string, Rule, RegExp])[] = [
    [
      "throws",
      broken({
        checks: () => {
          throw new Error("no idea");
        },
      }),
      /no idea/u,
    ],
    ["yields a text", yields("fine"), /made with the kit/u],
    [
      "compares metres with kilograms",
      yields(
        atMost(
          { path: "", label: "" },
          { measured: quantity("1 m") as never, allowed: quantity("1 kg"), says: () => "x" },
        ),
      ),
      /a length with a mass/u,
    ],
    [
      "measures what is no number",
      yields(
        atMost(
          { path: "", label: "" },
          { measured: { ...quantity("1 m"), value: Number.NaN }, allowed: quantity("1 m"), says: () => "x" },
        ),
      ),
      /no finite number/u,
    ],
    ["says nothing", yields(is({ path: "", label: "" }, { holds: true, says: "" })), /a sentence/u],
    [
      "changes the model",
      broken({
        checks: ({ build }: { build: { faces: unknown[] } }) => {
          build.faces.pop();
          return [];
        },
      }),
      /faces|read only|extensible|delete/iu,
    ],
    [
      "takes a part away",
      broken({
        checks: ({ repository }: { repository: { parts: Map<string, unknown> } }) => {
          repository.parts.clear();
          return [];
        },
      }),
      /cannot be changed/u,
    ],
  ];
  test.each(wrong)("%s", (_, each, says) => expect(() => checksOf(each, cases[0] as Case, around)).toThrow(says));
});

test("between two ends, both are allowed", () => {
  // 2.4 m by definition of the case: a face of 6 panels of 500 mm is 3 m wide.
  const wide = (least: `${number} m`, most: `${number} m`): Rule =>
    broken({
      *checks({ build }: { build: import("@plumbmark/kit").Build }) {
        for (const face of build.faces)
          yield within(face, {
            measured: face.width,
            least: quantity(least),
            most: quantity(most),
            says: ({ allowed }) => allowed,
          });
      },
    });
  const outcome = (made: Rule): unknown => checksOf(made, cases[0] as Case, around)[0];
  expect(outcome(wide("3 m", "4 m"))).toMatchObject({
    outcome: "holds",
    allowed: { least: 3, most: 4, sense: "within" },
  });
  expect(outcome(wide("2 m", "3 m"))).toMatchObject({ outcome: "holds", says: "6.562 ft to 9.843 ft" });
  expect(outcome(wide("3.1 m", "4 m"))).toMatchObject({ outcome: "fails" });
  expect(outcome(wide("2 m", "2.9 m"))).toMatchObject({ outcome: "fails" });
});

describe("a rule over the repository", () => {
  const vans = repositoryRule({
    id: "house.vans",
    states: "All faces together fit the van.",
    level: "should",
    why: "There is one van.",
    judged: "Panels of all builds against what the van takes.",
    sources: ["house"],
    *checks({ repository }) {
      const columns = repository.builds.flatMap(({ faces }) => faces.map((face) => face.columns));
      const sum = columns.reduce((total, each) => total + each, 0);
      for (const build of repository.builds)
        yield about(
          build,
          columns.includes(0)
            ? open(build, { says: "A face has no columns.", mend: "Write `columns`.", needs: ["faces"] })
            : is(build, { holds: sum <= 12, says: `The builds have ${sum} panels.`, mend: "Go twice." }),
        );
    },
  });
  const two = { "a.md": wall(6), "b.md": wall(10) };

  test("sees every build, and each document takes its own check", () =>
    tryOut(
      vans,
      [
        { name: "one", documents: wall(6), expects: [{ outcome: "holds", says: "6 panels" }] },
        {
          name: "two",
          documents: two,
          expects: [
            { outcome: "fails", file: "a.md", says: "16 panels" },
            { outcome: "fails", file: "b.md", says: "16 panels" },
          ],
        },
      ],
      { ...around, never: ["open"] },
    ));

  test("that does not say which document is told", () => {
    const mute = { ...vans, checks: () => [is({ path: "", label: "" }, { holds: true, says: "x" })] };
    expect(() => checksOf(mute, { name: "two", documents: two, expects: "holds" }, around)).toThrow(/about\(build/u);
  });
});
