import { freeDaysOf, stockShapes } from "@plumbmark/docs-site";
import { costOf, costText, Shelf } from "@plumbmark/draft";
import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { laidOut, opened, PATH, starterFiles, TODAY } from "./drafting.js";

const PANEL = "tile-500-p3.1";

describe("what free panels can become", () => {
  const repository = opened();
  const shelf = new Shelf({ repository: opened(), path: PATH });

  /** Whether a face with these spares fails no requirement or recommendation by its panels alone, asked of the rules. */
  function holds(columns: number, rows: number, spares: number, support: string): boolean {
    const face = `{panel: ${PANEL}, columns: ${columns}, rows: ${rows}, support: ${support}, spares: ${spares}}`;
    repository.replace(PATH, `---\nbuild: a\ntitle: A\nstatus: draft\nfaces:\n  a: ${face}\n---\n`, "document");
    const asked = ["panels.spares", "rigging.column-depth", "rigging.stack-height"];
    return repository.one(PATH).entry.checks.every(({ rule, outcome }) => !asked.includes(rule) || outcome !== "fails");
  }

  test.each(["flown", "stacked"] as const)("%s: no wider face of any number of rows holds", (support) => {
    const free = 9;
    const found = shelf.of({ name: "lot-2431", panel: PANEL }, free, support);
    for (let rows = 1; rows <= free; rows += 1) {
      const widths = Array.from({ length: Math.floor(free / rows) }, (_, index) => index + 1);
      // Every number of spares that is left is tried.
      const able = widths.filter((columns) =>
        Array.from({ length: free - columns * rows + 1 }, (_, spares) => spares).some((spares) =>
          holds(columns, rows, spares, support),
        ),
      );
      expect(found?.shapes.find((each) => each.rows === rows)?.columns ?? 0).toBe(Math.max(0, ...able));
    }
    expect(found?.shapes.length).toBeGreaterThan(2);
  });

  test("ends at what the maker lets hang below one another, whatever is free", () => {
    // The starter's part states it: at most ten hung, six standing.
    const of = (support: "flown" | "stacked") => shelf.of({ name: "lot-2431", panel: PANEL }, 40, support);
    expect(of("flown")?.not?.rows).toBe(11);
    expect(of("stacked")?.not?.rows).toBe(7);
    expect(of("flown")?.not?.says).toMatch(/11 panels/u);
  });

  test("more panels never make a face narrower", () => {
    const [fewer, more] = [12, 13].map((free) => shelf.of({ name: "lot-2431", panel: PANEL }, free, "flown"));
    for (const { rows, columns } of notEmpty(fewer?.shapes ?? []))
      expect(more?.shapes.find((each) => each.rows === rows)?.columns).toBeGreaterThanOrEqual(columns);
  });
});

describe("free days of a lot", () => {
  const promise = (from: string, to: string | undefined, count: number | undefined, draft = false) => ({
    lot: "lot-a",
    file: `builds/${from}.md`,
    face: "a",
    count,
    draft,
    stay: { from, ...(to === undefined ? {} : { to }) },
  });
  type Promises = Parameters<typeof freeDaysOf>[1];
  const days = (...all: readonly ReturnType<typeof promise>[]) =>
    freeDaysOf(20, all as unknown as Promises, { out: 0, back: 0 }, "2027-01-01");

  // Counted by hand: 8 from the 1st to the 4th, 7 more from the 3rd to the 6th of March; a draft takes none.
  test("are cut where panels leave and come back", () =>
    expect(
      days(
        promise("2027-03-01", "2027-03-04", 8),
        promise("2027-03-03", "2027-03-06", 7),
        promise("2027-03-02", "2027-03-02", 5, true),
      ),
    ).toEqual([
      { from: "2027-01-01", to: "2027-02-28", free: 20 },
      { from: "2027-03-01", to: "2027-03-02", free: 12 },
      { from: "2027-03-03", to: "2027-03-04", free: 5 },
      { from: "2027-03-05", to: "2027-03-06", free: 13 },
      { from: "2027-03-07", free: 20 },
    ]));

  test("what stays for good is away for good, and what was before today is told of no more", () =>
    expect(days(promise("2026-03-01", "2026-03-04", 8), promise("2027-05-01", undefined, 4))).toEqual([
      { from: "2027-01-01", to: "2027-04-30", free: 20 },
      { from: "2027-05-01", free: 16 },
    ]));

  test("cannot be told while somebody takes panels and does not say how many", () =>
    expect(days(promise("2027-05-01", "2027-05-02", undefined))[1]).toEqual({ from: "2027-05-01", to: "2027-05-02" }));

  test("every lot of the holdings has its shapes", () => {
    const all = stockShapes({ files: starterFiles(), rules, today: TODAY }, []);
    expect(all.map(({ lot }) => lot)).toEqual(["lot-2431", "lot-2507", "lot-2512"]);
    for (const { periods, made } of all) {
      expect(periods).toHaveLength(1);
      expect(made[0]?.held.map(({ support }) => support)).toEqual(["flown", "stacked"]);
    }
  });
});

describe("prices of what has to be bought", () => {
  const priced = (price: string) => {
    const files = starterFiles();
    const [before, after] = [
      "  kind: panel\n  describes: Indoor",
      `  kind: panel\n  price: ${price}\n  sold: {least: 4, case: 2}\n  describes: Indoor`,
    ];
    return { ...files, parts: files.parts.map((each) => ({ ...each, text: each.text.replace(before, after) })) };
  };
  const catalogue = opened(priced("412.00 USD")).catalogue;

  test("are number times price, in whole cases as it is sold", () => {
    // Five are needed, three cases of two are bought: 6 × 412.00 = 2,472.00 (arithmetic).
    const cost = costOf(catalogue, [{ part: PANEL, count: 5 }]);
    expect(cost).toEqual({
      pieces: [{ part: PANEL, count: 5, buy: 6, each: "412.00 USD", sum: "2472.00 USD" }],
      sums: ["2472.00 USD"],
      unpriced: [],
    });
    expect(costOf(catalogue, [{ part: PANEL, count: 1 }]).sums).toEqual(["1648.00 USD"]);
  });

  test("are never guessed: what has none is named, and is in no sum", () => {
    const cost = costOf(catalogue, [
      { part: PANEL, count: 4 },
      { part: "power-jumper", metres: 0.9, length: "0.9 m", count: 2 },
    ]);
    expect(cost.sums).toEqual(["1648.00 USD"]);
    expect(cost.unpriced).toEqual(["power-jumper of 0.9 m"]);
    expect(costText(cost)).toBe("1648.00 USD; not priced: power-jumper of 0.9 m");
  });

  test("stand with an option that buys its panels", () => {
    const wish = `wish: w\ntitle: W\nsupport: wall\nsize: {width: exactly 1 m, height: exactly 0.5 m}\npanel: ${PANEL}\nout-of: catalogue\n`;
    const { options, brief } = laidOut(wish, { files: priced("100.00 EUR") });
    const [option] = options;
    const panels = option?.shortfall.find(({ part }) => part === PANEL)?.count ?? 0;
    expect(panels).toBeGreaterThanOrEqual(2);
    // Sold in twos, four at the least.
    const bought = Math.max(4, 2 * Math.ceil(panels / 2));
    expect(costOf(brief.catalogue, option?.shortfall ?? []).sums).toEqual([`${bought * 100}.00 EUR`]);
  });
});
