import { printQuantity } from "@plumbmark/calc";
import { type CheckEntry, failuresAt, schedule, tableCsv } from "@plumbmark/core";
import { type Drawing, drawingsOf, svgFile } from "@plumbmark/docs-site";
import { describe, expect, it } from "vitest";
import { openedStarter } from "../../documents/repository.js";
import { notEmpty } from "../../run/not-empty.js";
import { readCsv } from "../../takeoff/csv-reader.js";
import { drawnOf } from "./one-document.js";
import { type Read, read, words } from "./read.js";

// What is drawn is what is judged: drawing, schedule, CSV, spoken description and check state the same figures.

const repository = openedStarter();
const builds = repository.documents.map((path) => [path, repository.one(path)] as const);

/** The avoirdupois pound, exactly (NIST SP 811, 2008, B.8). */
const POUND = 0.45359237;

interface Case {
  readonly name: string;
  readonly drawing: Drawing;
  readonly plot: Read;
  readonly checks: readonly CheckEntry[];
  readonly path: string;
  readonly row: readonly string[];
  readonly heads: readonly string[];
  readonly of: { readonly level: number; readonly worst: number; readonly onLevel: number; readonly onWorst: number };
}

const plotOf = (subject: Parameters<typeof drawingsOf>[0], bar: string): Drawing =>
  drawingsOf(subject).find(({ name }) => name === `hang-plot-${bar}`) as Drawing;

/** The same as it is drawn for all tests; the repository with every check listed comes to the same drawings. */
const drawnPlot = (file: string, bar: string): Drawing =>
  drawnOf(file).find(({ drawing }) => drawing.name === `hang-plot-${bar}`)?.drawing as Drawing;

const figureAt = (subject: Parameters<typeof drawingsOf>[0], path: string): number => {
  const value = subject.build.valueAt(path);
  if (!value?.known) throw new Error(`${path} is not known`);
  return value.value;
};

const bars = [...builds].flatMap(([file, subject]) =>
  subject.build.bars
    .filter(({ cases }) => cases.known)
    .map((bar) => ({ name: `${file} ${bar.name}`, file, subject, bar, drawing: drawnPlot(file, bar.name) })),
);

const hangs: readonly Case[] = bars.flatMap(({ file, subject, bar, drawing }) => {
  const { build, system, entry } = subject;
  const table = schedule(build, "hangs", system);
  const [heads = [], ...rows] = readCsv(tableCsv(table));
  const factor = system === "us" ? POUND : 1;
  return bar.hangs
    .filter(({ bridled }) => !bridled)
    .map((hang) => ({
      name: `${file} ${bar.name} ${hang.name}`,
      drawing,
      plot: read(svgFile(drawing)),
      checks: entry.checks,
      path: hang.path,
      heads: heads.map((head) => head.replace(/ \(.*\)$/u, "")),
      row: (rows.find(([own, name]) => own === bar.name && name === hang.name) ?? []).map((each) =>
        /^[\d.]+$/u.test(each) ? String(Number(each) * factor) : each,
      ),
      of: {
        level: figureAt(subject, `${hang.path}.reaction`),
        worst: figureAt(subject, `${hang.path}.worst`),
        onLevel: figureAt(subject, `${hang.path}.on-structure`),
        onWorst: figureAt(subject, `${hang.path}.worst-on-structure`),
      },
    }));
});

const cellsOf = ({ plot, path }: Case): ReadonlyMap<string, number> => {
  // The cells of a row of the table stand on one base line.
  const row = plot.having("data-row").find(([own]) => own === path)?.[1];
  const figures = ["data-level", "data-worst", "data-structure-level", "data-structure-worst"] as const;
  return new Map(
    figures.flatMap((name) =>
      plot
        .having(name)
        .filter(([, cell]) => cell.attributes.y === row?.attributes.y)
        .map(([value]) => [name, Number(value)] as const),
    ),
  );
};

const judged = ({ checks, path }: Case, rule: string): readonly number[] =>
  checks.flatMap((check) =>
    check.rule === rule && check.at.path === path && check.measured ? [check.measured.value] : [],
  );

const has = (values: readonly number[], wanted: number): boolean =>
  values.some((each) => Math.abs(each - wanted) < 1e-6 * Math.max(1, wanted));

describe("every hang of the starter", () => {
  it.each(notEmpty(hangs))("$name: the plot shows what is judged, level and at worst", (one) => {
    const { level, worst, onLevel, onWorst } = one.of;
    expect(Object.fromEntries(cellsOf(one))).toEqual({
      "data-level": level,
      "data-worst": worst,
      "data-structure-level": onLevel,
      "data-structure-worst": onWorst,
    });
    expect(has(judged(one, "rigging.point-load"), level)).toBe(true);
    expect(has(judged(one, "rigging.point-load"), onLevel)).toBe(true);
  });

  it.each(notEmpty(hangs))("$name: schedule and CSV show the same", ({ heads, row, of }) => {
    const figure = (head: string): number => Number(row[heads.indexOf(head)]);
    // A schedule keeps six digits.
    const close = (head: string, wanted: number) => expect(figure(head) / wanted, head).toBeCloseTo(1, 4);
    close("Load, level", of.level);
    close("Load at worst", of.worst);
    close("On structure, level", of.onLevel);
    close("On structure at worst", of.onWorst);
  });

  it.each(notEmpty(hangs.filter((each) => judged(each, "rigging.slack-hang").length > 0)))(
    "$name: the check on balances measures the same",
    (one) => {
      const measured = judged(one, "rigging.slack-hang");
      expect(has(measured, one.of.worst), `${one.of.worst} among ${measured}`).toBe(true);
      expect(has(measured, one.of.onWorst), `${one.of.onWorst} among ${measured}`).toBe(true);
    },
  );

  it("what no balance is judged for is level at worst: there is one way to hang on two", () => {
    const others = hangs.filter((each) => judged(each, "rigging.slack-hang").length === 0);
    const digits = (value: number): string => value.toPrecision(9);
    expect(others.map(({ of }) => digits(of.worst))).toEqual(others.map(({ of }) => digits(of.level)));
  });
});

describe("every bar of the starter", () => {
  it.each(notEmpty(bars))("$name: moments are those the strength is judged by, and the case is named", (one) => {
    const { bar, subject, drawing } = one;
    const plot = read(svgFile(drawing));
    const [[worst] = []] = plot.having("data-moment-worst");
    const [[level] = []] = plot.having("data-moment-level");
    expect(Number(worst)).toBe(figureAt(subject, `${bar.path}.worst-moment`));
    expect(Number(level)).toBe(figureAt(subject, `${bar.path}.moment`));
    const check = subject.entry.checks.find(({ rule, at }) => rule === "rigging.bar-strength" && at.path === bar.path);
    // A record keeps nine digits.
    expect(Number(worst) / (check?.measured?.value ?? Number.NaN)).toBeCloseTo(1, 7);
    const { when } = bar.worstMoment;
    if (when !== "") expect(drawing.description).toContain(when.trim().replace(/^with /u, ""));
  });

  it.each(notEmpty(bars))("$name: the description speaks every figure that is judged", ({ bar, subject, drawing }) => {
    expect(bar.hangs.length).toBeGreaterThan(0);
    const printed = (path: string): string => printQuantity(figureAt(subject, path), "mass", subject.system);
    for (const hang of bar.hangs) {
      expect(drawing.description).toContain(`${printed(`${hang.path}.worst`)} at worst`);
      expect(drawing.description).toContain(`${printed(`${hang.path}.reaction`)} level`);
    }
  });
});

describe("a figure for which a rule does not hold", () => {
  it.each(notEmpty(bars))("$name says which beside it", ({ subject, bar }) => {
    const [hang] = bar.hangs;
    const path = hang?.path ?? "";
    const [some] = subject.entry.checks;
    const failed = { ...some, rule: "rigging.point-load", outcome: "fails", at: { ...some?.at, path } } as CheckEntry;
    const plot = read(svgFile(plotOf({ ...subject, failures: failuresAt({ checks: [failed] }) }, bar.name)));
    const marked = plot.having("data-failure");
    expect(marked.map(([of]) => of)).toEqual([path]);
    expect(marked.map(([, element]) => words(element))).toEqual(["Does not hold: rigging.point-load fails"]);
  });
});
