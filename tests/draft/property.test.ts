import { type RepositoryFiles, workedValues } from "@plumbmark/core";
import { type Brief, briefFor, draft } from "@plumbmark/draft";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { deep } from "../run/effort.js";
import { opened, PATH, starterFiles, wished } from "./drafting.js";

/** A share of what `npm run deep` tries. */
const RUNS = deep ? 2_000 : 5;

const feet = fc.integer({ min: 2, max: 24 });
const side = fc
  .tuple(
    fc.constantFrom("at most", "at most", "at least", "about", ""),
    fc.integer({ min: 2, max: 16 }),
    fc.constantFrom("ft", "in"),
  )
  .map(([how, count, unit]) => `${how} ${unit === "ft" ? count : count * 12} ${unit}`.trim());

const circuit = fc.record({
  breaker: fc.constantFrom("15 A", "20 A", undefined),
  outlet: fc.constantFrom("nema-5-15", "nema-5-20"),
  outlets: fc.integer({ min: 1, max: 4 }),
  length: fc.integer({ min: 10, max: 200 }),
  load: fc.constantFrom("none", "300 W", "600 VA"),
});

const structure = fc.record({
  height: fc.integer({ min: 14, max: 24 }),
  points: fc.uniqueArray(fc.integer({ min: 1, max: 47 }), { minLength: 1, maxLength: 6 }),
  rating: fc.constantFrom("150 lb", "500 lb", undefined),
});

interface Asked {
  readonly support: "flown" | "stacked" | "wall" | "deck";
  readonly width: string | undefined;
  readonly height: string | undefined;
  readonly text: boolean;
  readonly people: boolean | undefined;
  readonly circuits: readonly {
    readonly breaker: string | undefined;
    readonly outlet: string;
    readonly outlets: number;
    readonly length: number;
    readonly load: string;
  }[];
  readonly structure: {
    readonly height: number;
    readonly points: readonly number[];
    readonly rating: string | undefined;
  };
  readonly led: boolean;
  readonly rack: number;
  readonly count: number;
  readonly trim: number | undefined;
}

const wish: fc.Arbitrary<Asked> = fc.record({
  support: fc.constantFrom("flown" as const, "flown" as const, "stacked" as const, "wall" as const, "deck" as const),
  width: fc.option(side, { nil: undefined }),
  height: fc.option(side, { nil: undefined }),
  text: fc.boolean(),
  people: fc.constantFrom(true, false, undefined),
  circuits: fc.array(circuit, { minLength: 0, maxLength: 4 }),
  structure,
  led: fc.boolean(),
  rack: feet,
  count: fc.integer({ min: 3, max: 40 }),
  trim: fc.option(fc.integer({ min: 7, max: 13 }), { nil: undefined }),
});

/** A wish as somebody would write it; venues, distances and ratings are invented. */
function written(asked: Asked): string {
  const { width, height, circuits, trim, people, text, rack, led } = asked;
  const size = [width && `width: ${width}`, height && `height: ${height}`].filter(Boolean).join(", ");
  const points = asked.structure.points
    .map(
      (at, index) =>
        `F${index + 1}: {at: ${at} ft${asked.structure.rating ? `, structure: ${asked.structure.rating}` : ""}}`,
    )
    .join(", ");
  return [
    "wish: any",
    "title: Any wish",
    "on-site: 2027-05-14 to 2027-05-16",
    ...(text ? ["shows: {text: {lines: 2}}"] : []),
    ...(size ? [`size: {${size}}`] : []),
    `support: ${asked.support}`,
    `over: {middle: {right: 0 ft, upstage: 2 ft}${trim === undefined ? "" : `, trim: at least ${trim} ft`}}`,
    ...(people === undefined ? [] : [`over-people: ${people}`]),
    "out-of: lot-a",
    "feed-from: {data: rack-a}",
    "venue:",
    "  exposure: indoors",
    "  on-stage: true",
    `  places: {rack-a: {right: -${rack} ft, upstage: 2 ft, up: 0 ft}, corner: {right: -${rack} ft, upstage: 2 ft, up: 12 ft}}`,
    ...(led ? ["  routes: {rack-a to beam: {via: [corner], led: {by: R. Tallow, on: 2026-10-02}}}"] : []),
    ...(circuits.length > 0 ? ["  circuits:"] : []),
    ...circuits.map(
      (each, index) =>
        `    c-${index + 1}: {supply: 120 V${each.breaker ? `, breaker: ${each.breaker}` : ""}, rides-through: 150 A, outlet: ${each.outlet}, outlets: ${each.outlets}, control: constant, residual: none, other-load: ${each.load}, wiring: {conductor: 12 AWG, length: ${each.length} ft, feeder-drop: 1 %}}`,
    ),
    `  structure: {beam: {from: {right: -24 ft, upstage: 2 ft, up: ${asked.structure.height} ft}, to: {right: 24 ft, upstage: 2 ft, up: ${asked.structure.height} ft}, girth: 40 in, points: {${points}}}}`,
    "  audience: {nearest: 15 ft, farthest: 60 ft}",
    "",
  ].join("\n");
}

function holding(count: number): RepositoryFiles {
  const files = starterFiles();
  const panels = files.parts.flatMap(({ text }) => [...text.matchAll(/^(tile-\d[\w.-]+):/gmu)].map(([, name]) => name));
  return {
    ...files,
    stock: { path: "stock.yaml", text: `lots: {lot-a: {panel: ${panels[0]}, batch: "1", count: ${count}}}\n` },
  };
}

function laid(asked: Asked) {
  const files = holding(asked.count);
  const repository = opened(files);
  const brief: Brief = briefFor(wished(written(asked)), { repository, path: PATH });
  return { files, brief, ...draft(brief, { name: "drafted", every: false }) };
}

/** What is wrong with options as they are written: requirements that fail, and figures that are not those of the workings. */
function wrongWith({ files, options }: ReturnType<typeof laid>): readonly string[] {
  return options.flatMap(({ document, figures }) => {
    const repository = opened(files);
    repository.replace(PATH, document, "document");
    const inspected = repository.one(PATH);
    const failing = inspected.entry.checks.filter(({ outcome, level }) => outcome === "fails" && level === "shall");
    const values = workedValues(inspected);
    const other = [...figures].filter(
      ([path, { text, value }]) => values.get(path)?.text !== text || values.get(path)?.value !== value,
    );
    return [
      ...failing.map(({ rule, says }) => `${rule}: ${says}`),
      ...other.map(([path]) => `${path} is another`),
      ...(figures.size === 0 ? ["no figure"] : []),
    ];
  });
}

const CIRCUIT = { breaker: "20 A", outlet: "nema-5-20", outlets: 2, length: 40, load: "none" } as const;

/** Wishes that can be met, tried first: of those made by chance a short run may hold none. */
const MET: readonly Asked[] = (["flown", "wall", "deck"] as const).map((support) => ({
  support,
  width: "exactly 2 m",
  height: "at most 2 ft",
  text: true,
  people: true,
  circuits: [CIRCUIT, CIRCUIT],
  structure: { height: 18, points: [19, 22, 26, 29], rating: "500 lb" },
  led: true,
  rack: 18,
  count: 30,
  trim: undefined,
}));

describe("any wish", () => {
  test("gives options that fail no requirement as they are written, with the figures of the workings and free panels", () => {
    let seen = 0;
    fc.assert(
      fc.property(wish, (asked) => {
        const found = laid(asked);
        seen += found.options.length;
        expect(wrongWith(found)).toEqual([]);
        // Nor more panels than are free, spares included.
        const panels = found.options.map(({ needs }) =>
          needs.filter(({ kind }) => kind === "panel").reduce((sum, { count }) => sum + count, 0),
        );
        expect(Math.max(0, ...panels)).toBeLessThanOrEqual(asked.count);
      }),
      { numRuns: RUNS, examples: MET.map((each): [Asked] => [each]) },
    );
    // Wishes of which none can be met would prove nothing.
    expect(seen).toBeGreaterThan(0);
  });
});

describe("monotony", () => {
  const banner = (more: Partial<Asked>): Asked => ({
    support: "wall",
    width: "at most 5 ft",
    height: "at most 4 ft",
    text: false,
    people: false,
    circuits: [{ breaker: "20 A", outlet: "nema-5-20", outlets: 4, length: 40, load: "none" }],
    structure: { height: 18, points: [10], rating: "500 lb" },
    led: true,
    rack: 10,
    count: 20,
    trim: 8,
    ...more,
  });
  const areas = (asked: Asked): readonly number[] => {
    const { options } = laid(asked);
    return options.map(({ scheme }) => scheme.columns * scheme.rows);
  };

  // Common sense, no source: what there is more of never makes less possible.
  test("more panels on the shelf never make a face smaller", () => {
    const most = [3, 5, 12].map((count) => Math.max(0, ...areas(banner({ count }))));
    expect(most).toEqual([...most].sort((a, b) => a - b));
    expect(most.at(-1)).toBeGreaterThan(most[0] as number);
  });

  test("more circuits never make fewer panels lit, nor more of them go dark with one", () => {
    const { circuits } = banner({});
    const [one, two] = [circuits, [...circuits, ...circuits]].map((each) => laid(banner({ circuits: each })).options);
    const largest = (options: typeof one): number =>
      Math.max(0, ...(options ?? []).map(({ scheme }) => scheme.columns * scheme.rows));
    expect(largest(two)).toBeGreaterThanOrEqual(largest(one));
    expect(largest(one)).toBeGreaterThan(0);
  });
});
