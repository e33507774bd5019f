import { readdirSync, readFileSync } from "node:fs";
import { type OpenRepository, openRepository, type RepositoryFiles, surveyKind } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import fc from "fast-check";
import { expect, inject, test } from "vitest";
import { parse } from "yaml";
import { STARTER, TODAY } from "../documents/repository.js";
import { notEmpty } from "../run/not-empty.js";
import { some } from "../run/some.js";

const { deep, seed } = inject("effort");
const LONG = 1_800_000;
/** As a repository is opened to be judged once, and as one in which somebody writes. */
const options = { today: TODAY, every: true } as const;
const written = { ...options, keep: "models", written: true } as const;

const file = (path: string) => ({ path, text: readFileSync(STARTER + path, "utf8") });
const folder = (name: string) =>
  readdirSync(STARTER + name)
    .sort()
    .map((each) => file(`${name}/${each}`));
const standard = file("house-standard.yaml");

/** What is edited, and two more that share its hall and its stock: every repository that is opened anew reads them all. */
const BUILDS = ["over-stage-banner", "riser-fascias", "side-strips", "small-screen"];

/** The starter as it is, without its plugin and with some of its builds. */
const starter: RepositoryFiles = {
  houseStandard: { ...standard, text: standard.text.replace(/^rules-from: .*\n/mu, "") },
  parts: folder("parts"),
  stock: file("stock.yaml"),
  surveys: folder("venues").filter(({ text }) => surveyKind(text) === "survey"),
  papers: readdirSync(`${STARTER}letters`).map((name) => `letters/${name}`),
  documents: folder("builds").filter(({ path }) => BUILDS.some((name) => path.includes(name))),
};

/** What does not hold alone is listed in an editor: what holds is then not worked out to the end. */
const write = (files: RepositoryFiles, every: boolean): OpenRepository =>
  openRepository(files, rules, { ...written, every });

const EDITED = "builds/over-stage-banner.md";
const BESIDE = "builds/side-strips.md";
const VENUE = "venues/marlow-quay-hall.md";
const PARTS = "parts/rigging.yaml";

/** Where in its file an edit is made: in the front matter or below it. */
type Where = "front" | "body";

/** One keystroke, or something pasted: at a share of the places there are, so many letters give way to a text. */
interface Edit {
  readonly path: string;
  readonly where: Where;
  readonly at: number;
  readonly takes: number;
  readonly text: string;
}

/** What is written into a body, that changes what stands around it or far below. */
const BODY = [
  ..."x|5|\n|\n\n|# |\n\n## Cautions\n\n|\n### Deeper\n|*|`|```\n|~~~\n|<!-- |-->|<b>|- [ ] |\n- [x] done\n|> |===\n".split(
    "|",
  ),
  ..."[11 ft](calc:faces.banner.trim)¦[99 lb](calc:faces.banner.mass)¦[1](calc:faces.nothing)¦[a](#cautions)".split(
    "¦",
  ),
  ..."[plan](calc:drawings.hang-plot-header)¦![](none.png)¦[b](small-screen.md)¦[c]: calc:faces.banner.trim\n¦[^1]: n\n¦[c]".split(
    "¦",
  ),
];
/** What is written into a front matter, much of which goes on to be valid. */
const FRONT = [..."1|2|5|9|12|0.5| |\n|a|{|}|[|,|: |#|- |~ 3 ft|4 kg ?|at most 2 m|draft|as-built".split("|"), "|"];

const edit = fc.oneof(
  ...[
    { weight: 4, path: EDITED, where: "body", texts: BODY },
    { weight: 1, path: BESIDE, where: "body", texts: BODY },
    { weight: 4, path: EDITED, where: "front", texts: FRONT },
    { weight: 1, path: BESIDE, where: "front", texts: FRONT },
    { weight: 1, path: VENUE, where: "front", texts: FRONT },
    { weight: 1, path: PARTS, where: "front", texts: FRONT },
  ].map(({ weight, path, where, texts }) => ({
    weight,
    arbitrary: fc.record({
      path: fc.constant(path),
      where: fc.constant(where as Where),
      at: fc.double({ min: 0, max: 0.999, noNaN: true }),
      takes: fc.constantFrom(0, 1, 1, 1, 3),
      text: fc.constantFrom("", ...texts),
    }),
  })),
);

/** Places at which something is likely to go on being what it is: behind digits in a front matter, anywhere in a body. */
function placesIn(text: string, where: Where): readonly number[] {
  const end = Math.max(0, text.indexOf("\n---", 4));
  const isFront = where === "front" && end > 0;
  const [from, to] = where === "body" ? [end + 5, text.length] : [0, end > 0 ? end : text.length];
  const found = [...text.slice(from, to).matchAll(isFront || where === "front" ? /\d/gu : /./gsu)];
  return found.length > 0 ? found.map(({ index }) => from + index) : [from];
}

const made = (text: string, { where, at, takes, text: put }: Edit): string => {
  const places = placesIn(text, where);
  const place = places[Math.floor(at * places.length)] as number;
  return text.slice(0, place) + put + text.slice(place + takes);
};

/** The text of a file as it is open. */
function textOf({ files: { documents, parts, surveys = [] } }: OpenRepository, path: string): string {
  const found = [...documents, ...parts, ...surveys].find((file) => file.path === path);
  if (!found) throw new Error(`there is no ${path}`);
  return found.text;
}

const figures = (repository: OpenRepository, path: string) =>
  [...repository.one(path).build.values].map(([name, value]) => [name, value.known ? value.value : value.gaps]);

/** What is told of a document check by check, and every figure of it. */
function agrees(now: OpenRepository, paths: readonly string[], every: boolean): void {
  const anew = openRepository(now.files, rules, { ...options, every });
  for (const path of notEmpty(paths)) {
    const [entry, { entry: expected }] = [now.turned(path), anew.one(path)];
    const { checks, ...rest } = entry;
    const { checks: others, ...more } = expected;
    for (const [index, check] of notEmpty(checks).entries()) expect(check).toEqual(others[index]);
    expect(checks.length).toBe(others.length);
    expect(rest).toEqual(more);
    expect(figures(now, path)).toEqual(figures(anew, path));
  }
}

test(
  "after every edit of a text the checks are those of a repository that is opened anew",
  () => {
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: deep ? 12 : 3 }), fc.boolean(), (edits, every) => {
        const now = write(starter, every);
        now.one(EDITED);
        for (const each of notEmpty(edits)) {
          const text = textOf(now, each.path);
          now.replace(each.path, made(text, each));
          // A quick run looks at the other document as well where that was edited, or what both rest on.
          agrees(now, deep || each.path !== EDITED ? [EDITED, BESIDE] : [EDITED], every);
          // What was typed last is taken back more often than not, so that most texts can be read.
          if (
            each.where === "front" &&
            now.one(EDITED).entry.checks.some(({ rule }) => rule === "document.front-matter")
          )
            now.replace(each.path, text);
        }
      }),
      { numRuns: deep ? 300 : 2 },
    );
  },
  LONG,
);

/** Edits of the front matter, one after another, each with figures of the text that are no longer right then. */
const LATER: readonly (readonly [was: string, is: string, told: readonly string[]])[] = [
  ["trim: 11 ft", "trim: 12 ft", ["faces.banner.trim"]],
  ["rate: 60 Hz", "rate: 50 Hz", ["picture.rate"]],
  ["spares: 2", "spares: 3", ["faces.banner.spares"]],
  [
    "jumper: {part: power-jumper, length: 0.9 m}",
    "jumper: {part: power-jumper, length: 9 m}",
    ["rigging.bars.header.load"],
  ],
  ["target: 400 cd/m2", "target: 500 cd/m2", ["viewing.banner.drive-level"]],
  ["rows: 1", "rows: 2", ["faces.banner.mass", "faces.banner.pixels-high"]],
];

// Each edit is another field; a quick run makes two of them, other ones with every seed.
test.each(notEmpty(deep ? LATER : some(LATER, 2, seed)))(
  "a figure of the text is looked at anew after the edit of %s to %s, and after it is taken back",
  (was, is, told) => {
    const now = write(starter, false);
    const text = textOf(now, EDITED);
    const quoted = (): readonly string[] =>
      now
        .one(EDITED)
        .entry.checks.flatMap(({ rule, at }) => (rule === "document.quoted-values" ? [at.path ?? ""] : []));
    expect(quoted()).toEqual([]);
    // What was looked at first is kept from the second model on.
    for (const each of ["revision: 5", "revision: 6"]) {
      now.replace(EDITED, text.replace("revision: 4", each));
      expect(quoted()).toEqual([]);
    }
    const edited = text.replace(was, is);
    expect(edited).not.toBe(text);
    now.replace(EDITED, edited);
    expect(quoted()).toEqual(expect.arrayContaining([...told]));
    expect(quoted().length).toBe(
      openRepository(now.files, rules, options)
        .one(EDITED)
        .entry.checks.filter(({ rule, outcome }) => rule === "document.quoted-values" && outcome !== "holds").length,
    );
    now.replace(EDITED, text);
    expect(quoted()).toEqual([]);
  },
);

test("what a survey states is laid into none of the groups that a build writes: the next model is made of them", () => {
  const now = write(starter, false);
  const { written, placed } = now.one(EDITED).build.reader;
  const [, front = ""] = textOf(now, EDITED).split(/^---$/mu);
  expect(JSON.parse(JSON.stringify(written.data))).toEqual(parse(front));
  expect(placed.data).not.toEqual(written.data);
});

test("what others have to know of a build is read anew where that was edited", () => {
  const now = write(starter, false);
  const text = textOf(now, EDITED);
  const taken = (): number =>
    now.free({ stay: { from: "2027-03-05", to: "2027-03-08" } }).lot("lot-2431")?.taken ?? Number.NaN;
  const first = taken();
  now.replace(EDITED, text.replace("revision: 4", "revision: 5"));
  expect(taken()).toBe(first);
  // Each spare is a panel more out of the lot.
  now.replace(EDITED, text.replace("spares: 2", "spares: 3"));
  expect(taken()).toBe(first + 1);
});

test("what rests on guesses and bounds is told anew after every edit", () => {
  const now = write(starter, false);
  const steps: readonly (readonly [was: string | RegExp, is: string])[] = [
    ["trim: 11 ft", "trim: 11 ft ?"],
    ["hangs over the front", "hangs right over the front"],
    ["raster: 1920 x 1080", "raster: 900 x 1080"],
    ["raster: 900 x 1080", "raster: 1920 x 1080"],
    ["sdi-coax, length: 160 ft", "sdi-coax, length: 160 ft ?"],
    ["hangs right over", "hangs over"],
    ["sdi-coax, length: 160 ft ?", "sdi-coax, length: at most 160 ft"],
    ["power-jumper, length: 0.9 m", "power-jumper, length: at least 0.9 m"],
    ["target: 400 cd/m2", "target: 450 cd/m2"],
    ["hangs over", "hangs well over"],
    ["trim: 11 ft ?", "trim: 3 ft ?"],
    ["sdi-coax, length: at most 160 ft", "sdi-coax, length: at most 900 ft"],
    ["trim: 3 ft ?", "trim: 11 ft"],
    ["length: at least 0.9 m", "length: 0.9 m"],
  ];
  now.one(EDITED);
  for (const [index, [was, is]] of steps.entries()) {
    const text = textOf(now, EDITED);
    const next = text.replace(was, is);
    expect(next).not.toBe(text);
    now.replace(EDITED, next);
    // A quick run compares after every seventh step and the last, after others with every seed; what is kept is of the
    // step before.
    const isLast = index === steps.length - 1;
    if (deep || isLast || (index + seed) % 7 === 0) agrees(now, [EDITED], false);
    else if (index === steps.length - 2 || (index + seed) % 7 === 6) now.turned(EDITED);
  }
});
