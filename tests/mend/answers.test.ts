import { type MendEntry, openRepository } from "@plumbmark/core";
import { describe, expect, test } from "vitest";
import { onlyRules, TODAY } from "../documents/repository.js";
import { SINGLE_MISTAKES, withMistake } from "../documents/single-mistakes.js";
import { notEmpty } from "../run/not-empty.js";

const known = new Map<string, readonly MendEntry[]>();

/** The mends of a slip, looked for once for all tests. */
function mendsOf(slip: string): readonly MendEntry[] {
  const mends = known.get(slip) ?? mendsFound(slip);
  known.set(slip, mends);
  return mends;
}

function mendsFound(slip: string): readonly MendEntry[] {
  const mistake = SINGLE_MISTAKES.find((each) => each.slip === slip);
  if (!mistake) throw new Error(`there is no slip ${slip}`);
  const { files, file } = withMistake(mistake);
  const entry = openRepository(files, onlyRules(["document.front-matter", "document.parts"]), {
    today: TODAY,
    turns: false,
  })
    .all()
    .documents.find((each) => each.file === file);
  const mistakes = entry?.checks.filter(({ rule }) => /^document\.(?:front-matter|parts)$/u.test(rule)) ?? [];
  return mistakes.find(({ mends }) => mends !== undefined)?.mends ?? [];
}

const said = (mends: readonly MendEntry[], sure: boolean): readonly string[] =>
  mends.filter((each) => each.sure === sure).map(({ was, becomes }) => `${was} -> ${becomes}`);

describe("what has one answer", () => {
  test.each([
    ["misspelt key that is needed", "colums -> columns"],
    ["misspelt key of a hang", "att -> at"],
    ["key with an underscore", "on_site -> on-site"],
    ["key in capitals", "Support -> support"],
    ["comma decimal", "3,35 m -> 3.35 m"],
    ["comma decimal of a part", "7,9 kg -> 7.9 kg"],
    ["comma decimal inside braces", "0,9 m -> 0.9 m"],
    ["comma decimal inside braces of a part", "0,25 kg/m -> 0.25 kg/m"],
    ["a range with a hyphen", "100-240 V -> 100 V to 240 V"],
    ["tab for blanks", "\t ->     "],
    ["tab in the catalogue", "\t ->   "],
    ["number in quotes", '"6" -> 6'],
    ["word that is not allowed", "for build -> for-build"],
    ["pair with a comma", "1920, 1080 -> 1920 x 1080"],
  ])("%s", (slip, expected) => {
    expect(said(mendsOf(slip), true)).toEqual([expected]);
  });
});

describe("what has several, or needs a person, is offered", () => {
  test.each([
    ["dates the wrong way round", ["2027-03-08 to 2027-03-05 -> 2027-03-05 to 2027-03-08"]],
    ["thousands separator", ["1,000 lb -> 1000 lb", "1,000 lb -> 1.000 lb"]],
    // What the structure carries stands in a letter: whoever has it transcribes it.
    ["blank as thousands separator", ["1 000 lb -> 1000 lb"]],
    ["a range where one value belongs", ["100-240 V -> 100 V", "100-240 V -> 240 V"]],
    ["missing unit", ["11 -> 11 ft ?", "11 -> 11 in ?", "11 -> 11 m ?", "11 -> 11 mm ?"]],
    ["unknown panel", ["tile-500-p2.8 -> tile-500-p3.1"]],
    ["unknown part of a hang", ["beam-clip -> beam-clamp"]],
    ["unknown section of a bar", ["pipe-1.6-std -> pipe-1.5-std"]],
    ["unknown lot", ["lot-2413 -> lot-2431"]],
    ["face named in cells unknown", ["baner A1..A6 -> banner A1..A6"]],
    ["unknown kind of a part", ["hardwear -> hardware"]],
    ["unknown connector of a panel", ["ac-loking-16 -> ac-locking-16"]],
  ] as readonly (readonly [string, readonly string[]])[])("%s", (slip, expected) => {
    const mends = mendsOf(slip);
    expect(said(mends, true)).toEqual([]);
    for (const each of notEmpty(expected)) expect(said(mends, false)).toContain(each);
  });

  test("a bare number becomes a guess and never more", () => {
    for (const slip of ["missing unit", "missing unit of a current", "missing unit of a mass"])
      for (const { becomes } of notEmpty(mendsOf(slip))) expect(becomes).toMatch(/ \?$/u);
  });

  test("of all single mistakes, no name of a part, point, face or lot has a sure answer", () => {
    const names = SINGLE_MISTAKES.filter(({ slip }) => /^unknown|^part of another|misspelt$/u.test(slip));
    expect(names.length).toBeGreaterThan(12);
    for (const { slip } of names) expect({ slip, sure: said(mendsOf(slip), true) }).toEqual({ slip, sure: [] });
  });
});
