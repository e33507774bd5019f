import { openRepository, schedule, tableCsv } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import { textReport } from "../../packages/cli/src/report/text.js";
import { approvedAsTheyAre, changed, onlyRules, SMALL, starter, TODAY } from "./repository.js";

const CORD = "jacket: SOOW, mass: 0.25 kg/m, rating: 20 A";

/** The small build among the starter's parts, the feed's entry with something else in place of its mass. */
function opened(entry: string, text = SMALL, asked = rules) {
  const parts = starter().parts.map((each) => ({ ...each, text: each.text.replace(CORD, () => entry) }));
  const files = { ...starter(), parts, documents: [{ path: "builds/1.md", text }] };
  return openRepository(approvedAsTheyAre(files), asked, { today: TODAY, every: true });
}

const inspected = (entry: string, text?: string, asked?: typeof rules) => {
  const [document] = opened(entry, text, asked).all().documents;
  if (!document) throw new Error("one document in, one document out");
  return document;
};

const NONE = "jacket: SOOW, rating: 20 A";
/** What the first hang and its hardware weigh on the structure. */
const onHang = (entry: string, text?: string) =>
  inspected(entry, text, onlyRules(["rigging.point-load"])).checks.filter(
    ({ rule, at, says }) =>
      rule === "rigging.point-load" && at.path.endsWith("H1") && says.includes("weigh") && says.includes("structure"),
  );

/** The small build with its first hang rated otherwise. */
const rated = (rating: string): string =>
  changed("H1: {structure: 500 lb,", `H1: {structure: ${rating},`).replace(
    "pipe-collar], structure: 500 lb}\n        H2",
    `pipe-collar], structure: ${rating}}\n        H2`,
  );

describe("the mass of a cord that nobody wrote down", () => {
  test("is assumed, and a build stays ready where it holds at both ends", () => {
    expect(inspected(CORD).verdict).toBe("ready");
    const document = inspected(NONE);
    expect(document.verdict).toBe("ready");
    const resting = document.checks.filter((check) => check["rests-on-assumed"]);
    expect(resting.length).toBeGreaterThan(0);
    for (const check of resting) expect(check["rests-on-assumed"]).toEqual(["cord-12-3.mass"]);
  });
  test("counts with the greater end, so that loads are no smaller than with any mass of the interval", () => {
    const load = (entry: string): number => onHang(entry)[0]?.measured?.value ?? Number.NaN;
    for (const mass of ["0.08 kg/m", "0.25 kg/m", "0.43 kg/m"])
      expect(load(NONE)).toBeGreaterThan(load(`jacket: SOOW, mass: ${mass}, rating: 20 A`));
  });
  test("is marked in the working with its interval and its source", () => {
    const from = onHang(NONE).flatMap(({ working }) => working?.flatMap((line) => line.from ?? []) ?? []);
    // The interval is in kg/m whatever the units of the document: 12 AWG is taken with the 4 mm² of the table.
    expect(from.join("\n")).toMatch(/assumed, for none is written: from 0\.075 to 0\.44 kg\/m, IEC 60227-5/u);
    const failing = opened(NONE, rated("10 lb"), onlyRules(["rigging.point-load"])).all();
    const report = textReport(failing, { width: 80, colour: 0 }).replace(/\s+/gu, " ");
    expect(report).toContain("Assumed: `cord-12-3.mass`.");
  });
  test("is marked in schedules and in the column `sure` of CSV", () => {
    const { build, system } = opened(NONE).model("builds/1.md");
    const made = schedule(build, "parts", system);
    const row = made.rows.find((cells) => cells.some(({ text }) => text === "cord-12-3"));
    expect(row?.some(({ text }) => /^assumed [\d.]+$/u.test(text))).toBe(true);
    const line = tableCsv(made)
      .split("\r\n")
      .find((each) => each.startsWith("cord-12-3,"));
    expect(line).toMatch(/,assumed$/u);
  });

  /** A rating between what the hang bears at one end of the interval and at the other. */
  function between(): string {
    const load = (entry: string): number => onHang(entry)[0]?.measured?.value ?? Number.NaN;
    const middle = (load("jacket: SOOW, mass: 0.0751 kg/m, rating: 20 A") + load(NONE)) / 2;
    return `${Number((middle / 0.45359237).toPrecision(6))} lb`;
  }
  test("leaves open what holds at one end only, and asks for it", () => {
    const open = onHang(NONE, rated(between())).filter(({ outcome }) => outcome === "open");
    expect(open.length).toBeGreaterThan(0);
    for (const check of open) {
      expect(check["rests-on-bounds"]).toEqual(["cord-12-3.mass"]);
      expect(check.says).toContain("`cord-12-3.mass` (assumed, 0.075 kg/m to 0.44 kg/m)");
      expect(check.mend).toContain("`cord-12-3.mass`");
    }
    expect(inspected(NONE, rated(between())).verdict).toBe("not ready");
  });
  test("leaves a failure one where it fails at both ends", () => {
    expect(onHang(NONE, rated("10 lb")).map(({ outcome }) => outcome)).toContain("fails");
  });

  test.each([
    ["a type in no table", "jacket: XYZ, rating: 20 A"],
    ["no type", "rating: 20 A"],
  ])("is not assumed of %s: it is open", (_, entry) => {
    const document = inspected(entry);
    expect(document.verdict).toBe("not ready");
    expect(document.checks.some(({ missing }) => missing?.includes("cord-12-3.mass"))).toBe(true);
  });
  test("is not assumed from a guess, nor where what is written cannot be read", () => {
    for (const [from, to] of [
      ["conductors: 3, jacket: SOOW, mass: 0.25 kg/m, rating: 20 A", "conductors: 3 ?, jacket: SOOW, rating: 20 A"],
      [CORD, "jacket: SOOW, mass: heavy, rating: 20 A"],
    ] as const) {
      const parts = starter().parts.map((each) => ({ ...each, text: each.text.replace(from, () => to) }));
      const files = { ...starter(), parts, documents: [{ path: "builds/1.md", text: SMALL }] };
      const [document] = openRepository(files, rules, { today: TODAY, every: true }).all().documents;
      expect(document?.checks.some((check) => check["rests-on-assumed"])).toBe(false);
    }
  });
});

describe("only masses that are added are assumed", () => {
  // Each of these helps, or is a rating; none may be filled in.
  test.each([
    ["rating: 20 A, ", "power-cable"],
    ["wll: 1000 lb, ", "hardware"],
    ["  wll: 1300 lb\n", "rope"],
    ["  mass: 0.5 lb\n", "rope"],
    ["breaking: 5000 lb, ", "hardware"],
    ["mass: 0.3 lb, ", "hardware"],
    ["mass: 0.045 kg/m, ", "data-cable"],
  ])("without `%s` of a %s nothing is filled in", (written) => {
    const parts = starter().parts.map((each) => ({ ...each, text: each.text.replace(written, "") }));
    const files = { ...starter(), parts, documents: [{ path: "builds/1.md", text: SMALL }] };
    const { build } = openRepository(files, [], { today: TODAY }).model("builds/1.md");
    const all = [...build.reader.parts.values()];
    expect(all.length).toBeGreaterThan(10);
    for (const { unsure } of all) expect(unsure.filter(({ sure }) => sure === "assumed")).toEqual([]);
  });
});
