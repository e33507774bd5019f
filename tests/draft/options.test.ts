import { type RepositoryFiles, readSurveys, workedValues } from "@plumbmark/core";
import { briefFor, draftRecord, notSaid, optionsTable, readWish } from "@plumbmark/draft";
import { beforeAll, describe, expect, test, vi } from "vitest";
import { BANNER, type Laid, laidOut, laidOutFirst, opened, PATH, starterFiles, wished } from "./drafting.js";

// Some lay out a wish in many ways, which takes its time where others work on the machine, too.
vi.setConfig({ testTimeout: 180_000 });

let banner: Laid;
beforeAll(() => {
  banner = laidOut(BANNER);
});

/** A metre of it, of one lot: two panels, where what is asked is no matter of how many there are. */
const METRE = BANNER.replace("width: at most 10 ft", "width: exactly 1 m")
  .replace("out-of: holdings", "out-of: lot-2431")
  .replace(/shows: .*\n/u, "shows: colour\n");

/** The starter's files with so many panels of one lot and none of the others: what is not there is not looked at. */
const owning = (panels: number, more = ""): RepositoryFiles => {
  const files = starterFiles();
  const text = (files.stock?.text ?? "")
    .replace(/^( {2}lot-2431: .*count: )\d+/mu, `$1${panels}`)
    .replace(/^ {2}lot-25.*\n/gmu, "")
    .replace(/^( {2}beam-clamp:)/mu, `${more}$1`);
  expect(text).toContain(`count: ${panels},`);
  expect(text).not.toContain("lot-25");
  return { ...files, stock: { path: "stock.yaml", text } };
};

describe("a banner over the stage", () => {
  test("is the largest of whole panels that goes into ten feet by two", () => {
    // Six panels of 500 mm are 3,000 mm; ten feet are 3,048 mm, two feet 609.6 mm (the foot is 0.3048 m, ISO 80000-3).
    expect(banner.options[0]?.scheme).toMatchObject({ columns: 6, rows: 1 });
    for (const { scheme } of banner.options) {
      expect(scheme.columns * 0.5).toBeLessThanOrEqual(10 * 0.3048);
      expect(scheme.rows * 0.5).toBeLessThanOrEqual(2 * 0.3048);
    }
  });

  test("fails no requirement as it is written, and its figures are those of the workings", () => {
    expect(banner.options.length).toBeGreaterThan(0);
    const repository = opened();
    for (const option of banner.options) {
      repository.replace(PATH, option.document, "document");
      const inspected = repository.one(PATH);
      expect(inspected.entry.checks.filter(({ outcome, level }) => outcome === "fails" && level === "shall")).toEqual(
        [],
      );
      expect(inspected.entry.verdict).toBe("draft");
      const values = workedValues(inspected);
      const said = [...option.figures].map(([path, { text, value }]) => ({ path, text, value }));
      expect(said.length).toBeGreaterThan(100);
      expect(said).toEqual(
        said.map(({ path }) => ({ path, text: values.get(path)?.text, value: values.get(path)?.value })),
      );
    }
  });

  test("puts no circuit over 80 % of its breaker", () => {
    // NFPA 70 (NEC) 210.20(A): an overcurrent device is at least 125 % of the continuous load.
    const currents = banner.options.flatMap(({ figures }) =>
      [...figures].flatMap(([path, { value }]) =>
        /^power\.circuits\.[^.]+\.current$/u.test(path)
          ? [{ value, breaker: figures.get(path.replace(/current$/u, "breaker"))?.value }]
          : [],
      ),
    );
    expect(currents.length).toBeGreaterThan(0);
    for (const { value, breaker } of currents) expect(Number(value) * 1.25).toBeLessThanOrEqual(Number(breaker));
  });

  test("leaves to people what people decide", () => {
    const [option] = banner.options;
    for (const title of ["Cautions", "Lift plan", "Power-up"])
      expect(option?.document).toMatch(new RegExp(`## ${title}\n\n<!-- Somebody has to decide:`, "u"));
    expect(option?.document).not.toMatch(/approved|prepared-by|cautions-confirmed:/u);
    expect(option?.toFindOut.length).toBeGreaterThan(0);
  });
});

describe("reading a wish", () => {
  const mistakesIn = (text: string) => readWish({ path: "wishes/w.yaml", text }).mistakes;

  test("a bare length is the most", () => {
    const { wish } = readWish({ path: "w.yaml", text: "wish: w\ntitle: W\nsize: {width: 10 ft, height: about 2 m}\n" });
    expect(wish?.width).toEqual({ how: "at most", length: 3.048 });
    expect(wish?.height).toEqual({ how: "about", length: 2 });
  });

  test.each([
    ["an extent that is no length", "size: {width: at most ten}", "size.width", 3, 15],
    ["a key nobody knows", "supprt: flown", "supprt", 3, 1],
    ["a support there is none of", "support: hung", "support", 3, 10],
    ["a kind of quantity that does not belong there", "over: {middle: {right: 5 A}}", "over.middle.right", 3, 24],
  ])("%s is told with its place", (_, line, path, row, column) => {
    const [mistake] = mistakesIn(`wish: w\ntitle: W\n${line}\n`);
    expect(mistake).toMatchObject({ path, place: { line: row, column } });
    expect(mistake?.mend).not.toBe("");
  });

  test("a venue nobody surveyed is told with the one that was meant", () => {
    const text = "---\nsurvey: marlow-quay-hall\ntitle: Marlow Quay Hall\n---\n";
    const surveys = readSurveys([{ path: "venues/marlow.md", text }]).byName;
    const { mistakes } = readWish({ path: "w.yaml", text: "wish: odd\ntitle: Odd\nvenue: marlow-quay-hal\n" }, surveys);
    expect(mistakes).toMatchObject([{ path: "venue", place: { line: 3, column: 8 } }]);
    expect(mistakes[0]?.mend).toContain("`marlow-quay-hall`");
  });

  test("a place may be to the left and towards the audience", () => {
    const { wish, mistakes } = readWish({
      path: "w.yaml",
      text: "wish: w\ntitle: W\nover: {middle: {right: -3 ft, upstage: -1 m}}\n",
    });
    expect(mistakes).toEqual([]);
    expect(wish?.right).toBeCloseTo(-0.9144, 12);
    expect(wish?.upstage).toBe(-1);
  });
});

describe("a wish that says little", () => {
  test("of the height is as low as does, and says so", () => {
    const wish = METRE.replace(", height: at most 2 ft", "");
    expect(wish).not.toBe(METRE);
    // Eight panels make it two and three rows high, too.
    const { brief, options } = laidOut(wish, { files: owning(8) });
    expect(options[0]?.scheme.rows).toBe(1);
    expect(notSaid(brief)).toContain("How high it is: as low as does.");
  });

  test("of the height of a picture is near the shape of the usual rasters", () => {
    // CTA-861: 1920 × 1080 and 1280 × 720 are 16 to 9. Nine panels of half a metre are 4.5 m, five 2.5 m: 16 to 8.9.
    const wish = BANNER.replace(/shows: .*\nsize: .*\n/u, "shows: picture\nsize: {width: exactly 4.5 m}\n");
    const { options, fellOut } = laidOut(wish.replace("out-of: holdings", "out-of: catalogue"));
    expect(options[0]?.scheme ?? fellOut[0]).toMatchObject({ columns: 9, rows: 5 });
  });

  test("of what it hangs under has no hangs and no way with one more, and asks which structure", () => {
    const beam = "from: {right: 18 ft, upstage: 9 ft, up: 18 ft}, to: {right: 42 ft, upstage: 9 ft, up: 18 ft}";
    const two = BANNER.replace("at most 10 ft", "at most 4 ft").replace(
      "  structure:\n",
      `  structure:\n    rear-beam: {${beam}}\n`,
    );
    const laid = laidOut(two.replace(/over: \{middle.*\}/u, "over: {trim: at least 10 ft}"));
    const { brief, options } = laid;
    expect(options.length).toBeGreaterThan(0);
    expect(new Set(options.map(({ document }) => document)).size).toBe(options.length);
    for (const { scheme } of options) expect(scheme.variant.join()).not.toContain("hang");
    expect(notSaid(brief).join("\n")).toMatch(/What it hangs under: .* rear-beam, front-beam\./u);
    expect(JSON.stringify(optionsTable(draftRecord(brief, laid)).rows[0])).toContain("not laid out");
  });

  test("of the rack puts it where a circuit has its outlet", () => {
    const { brief, options } = laidOutFirst(
      METRE.replace(", data: rack-a", "").replace("stage-4: {supply", "stage-4: {at: rack-a, supply"),
    );
    expect(notSaid(brief).join("\n")).toContain("it was put at rack-a, where a circuit has its outlet");
    expect(options[0]?.document).toContain("place: rack-a");
  });
});

test("sizes are told as a tape is read", () => {
  // 3,000 mm are 118.11 in and 500 mm 19.685 in (the inch is 25.4 mm, ISO 80000-3), to the quarter inch.
  expect(banner.options[0]?.size).toBe("9 ft 10 in × 1 ft 7-3/4 in");
});

describe("lifting gear whose inspection runs out before the build", () => {
  const on = (days: string): Laid => laidOut(METRE.replace("2027-05-14 to 2027-05-16", days));

  test("makes an option possible, if it is inspected again in time", () => {
    // A year after 2026-10-05, when the starter's gear was last inspected, ends before the build (ASME B30.26: a year).
    const { options } = on("2027-11-14 to 2027-11-16");
    expect(options.length).toBeGreaterThan(0);
    for (const { possibleIf, toFindOut, shortfall } of options) {
      expect(possibleIf).toEqual([expect.stringMatching(/inspected again by a qualified person, by 2027-11-14,/u)]);
      expect(toFindOut.some(({ by }) => by === "a qualified person who inspects it")).toBe(true);
      expect(shortfall).toEqual([]);
    }
  });

  test("is not asked for where it lasts", () => {
    expect(BANNER).toContain("on-site: 2027-05-14 to 2027-05-16");
    const { options } = banner;
    expect(options.length).toBeGreaterThan(0);
    expect(options.flatMap(({ possibleIf }) => possibleIf)).toEqual([]);
  });

  test("is not asked for too early: half a year after that it would have run out again", () => {
    // A year before 2028-03-16 is 2027-03-16.
    const { options } = on("2028-03-14 to 2028-03-16");
    expect(options[0]?.possibleIf[0]).toContain("no earlier than 2027-03-16 and by 2028-03-14");
  });
});

test.each([
  ["whose outlets all go to the devices", "outlets: 2", /Outlets are what is short: c1 has 2; .* take 2\./u],
  ["that is full", "outlets: 9, other-load: 1910 VA", /What is on them already leaves room for none/u],
])("of a circuit %s it is said why it takes no panel", (_, more, says) => {
  const circuit = `{supply: 120 V, breaker: 20 A, outlet: nema-5-20, ${more}}`;
  const { options, fellOut } = laidOut(
    `wish: w\ntitle: W\nsize: {width: exactly 1 m, height: exactly 500 mm}\npanel: tile-500-p3.1\nsupport: wall\nvenue: {circuits: {c1: ${circuit}}}\n`,
  );
  expect(options).toEqual([]);
  expect(fellOut[0]?.says).toMatch(says);
});

test("of days that are over it is said that they are", () => {
  const wish = wished(
    "wish: w\ntitle: W\non-site: 2026-01-02 to 2026-01-03\nsize: {width: at most 2 ft}\nsupport: wall\n",
  );
  const brief = briefFor(wish, { repository: opened(), path: PATH });
  expect(notSaid(brief).join("\n")).toContain("those on site were over on 2026-01-03");
});

test("panels another lot has enough of are not told as short", () => {
  // The starter has 24 and 14 of one panel; 6 by 3 are 18, and more with spares.
  const { fellOut } = laidOut(
    "wish: w\ntitle: W\nsize: {width: exactly 3 m, height: exactly 1.5 m}\nsupport: wall\npanel: tile-500-p4.2\n",
  );
  expect(fellOut.map(({ rule }) => rule)).not.toContain("panels.stock");
});

describe("panels that may lie on their side", () => {
  /** Twice as high as wide; invented. */
  const tall = (turns: string, takes: string) => {
    const files = starterFiles();
    const [, panels = ""] =
      files.parts.map(({ text }) => /^tile-500-p3\.1:\n((?: .*\n)+)/mu.exec(text)).find(Boolean) ?? [];
    const panel = panels.replace("500 mm x 500 mm", "500 mm x 1 m").replace("160 x 160", "160 x 320");
    const hook =
      "kind: attachment, wll: 300 lb, breaking: 3300 lb, mass: 1.8 kg, columns: 1, drop: 90 mm, fits: 48 mm to 61 mm, takes: tall";
    const text = `tall:\n${panel}${turns}tall-hook: {${hook}${takes}}\n`;
    return { ...files, parts: [...files.parts, { path: "parts/tall.yaml", text }] };
  };
  const WISH = BANNER.replace("out-of: holdings", "out-of: catalogue\npanel: tall").replace(
    /shows: .*\n/u,
    "shows: colour\n",
  );

  test("make a face no upright one can be, by leave of both makers", () => {
    // A metre is more than two feet, half a metre is not (the foot is 0.3048 m); three metres go into ten feet.
    const { options } = laidOutFirst(WISH, { files: tall("  turns: [90]\n", ", takes-turned: [90]") });
    expect(options[0]?.scheme).toMatchObject({ columns: 3, rows: 1, rotated: 90 });
    expect(options[0]?.figures.get("faces.display.width")?.value).toBeCloseTo(3, 9);
    expect(options[0]?.figures.get("faces.display.pixels-wide")?.value).toBe(960);
    expect(options[0]?.document).toContain("rotated: 90");
  });

  test.each([
    ["the maker of the panel says none", "  turns: none\n", ", takes-turned: [90]"],
    ["the maker of the panel says nothing", "", ", takes-turned: [90]"],
    ["nothing that would hang them is made for it", "  turns: [90]\n", ""],
  ])("are not turned where %s", (_, turns, takes) =>
    expect(laidOut(WISH, { files: tall(turns, takes) }).options).toEqual([]),
  );

  test("stay upright where that is as near to the wish", () => {
    // Six upright by one and three lying by two are both 3 m by 1 m.
    const high = WISH.replace("height: at most 2 ft", "height: at most 4 ft").replace(
      "at least 10 ft",
      "at least 8 ft",
    );
    const { options } = laidOut(high, { files: tall("  turns: [90]\n", ", takes-turned: [90]") });
    expect(options.length).toBeGreaterThan(0);
    for (const { scheme } of options) expect(scheme.rotated).toBeUndefined();
  });
});

test("of a cable that is owned too short it is said which of the catalogue would have to be bought", () => {
  const files = owning(4, "  cord-12-3: {lengths: {15 ft: 4}}\n");
  expect(files.stock?.text).toContain("cord-12-3");
  const { options, fellOut } = laidOut(METRE, { files });
  expect(options).toEqual([]);
  expect(fellOut[0]?.says).toBe("It can be made if this is bought or hired first: 1 cord-12-3 of 50 ft.");
});
