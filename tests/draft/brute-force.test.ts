import type { Build, CheckEntry, Data } from "@plumbmark/core";
import type { Option } from "@plumbmark/draft";
import { describe, expect, test } from "vitest";
import { BANNER, laidOutFirst, opened, PATH, starterFiles } from "./drafting.js";

// What a draft has chosen against every other way there is, each laid over the drafted document and judged by the rules
// as any document is: nothing of the search is used to try them.

/** The drafted document with values laid over it. */
interface Over {
  readonly build: Build;
  /** The first requirement that fails, but for those about the form of the document: the others are not asked then. */
  failing(): CheckEntry | undefined;
}

/** Asks about the drafted document with values laid over it. */
function laidOver(option: Option): (path: string, value: Data) => Over {
  const files = starterFiles();
  const repository = opened({ ...files, documents: [{ path: PATH, text: option.document }] });
  let asked = repository.rules.filter(({ id }) => !id.startsWith("document."));
  return (path, value) => {
    const laid = repository.with([{ op: "replace", document: PATH, path, value }]);
    return {
      build: laid.model(PATH).build,
      failing: () => {
        for (const rule of asked) {
          const found = laid.run(rule, PATH).find(({ outcome, level }) => outcome === "fails" && level === "shall");
          if (!found) continue;
          // What one way failed by another is likely to fail by, too.
          asked = [rule, ...asked.filter((each) => each !== rule)];
          return found;
        }
        return undefined;
      },
    };
  };
}

/** Every way to write a number as a sum of so many, none less than nothing. */
function* sums(total: number, parts: number): Generator<readonly number[]> {
  if (parts === 1) {
    yield [total];
    return;
  }
  for (let first = 0; first <= total; first += 1)
    for (const rest of sums(total - first, parts - 1)) yield [first, ...rest];
}

const circuit = (rating: number, other: string): string =>
  `{supply: 120 V, breaker: ${rating} A, rides-through: 400 A, outlet: nema-5-20, outlets: 2, wiring: {conductor: 12 AWG, length: 50 ft, feeder-drop: 1 %}, control: constant, other-load: ${other}, residual: none}`;

describe("every way tried, and judged by the rules", () => {
  test("no assignment of six panels to three circuits is better than the one that is drafted", () => {
    const wish = BANNER.replace(/power: \[.*?\]/u, "power: [a, b, c]").replace(
      / {2}circuits:\n(?: {4}.*\n)+/u,
      `  circuits:\n    a: ${circuit(20, "1300 W")}\n    b: ${circuit(20, "1000 W")}\n    c: ${circuit(20, "1100 W")}\n`,
    );
    const { options } = laidOutFirst(wish);
    const [option] = options;
    if (!option) throw new Error("the wish gives an option");
    const { runs } = option.scheme.matter.power as unknown as {
      readonly runs: Readonly<Record<string, Readonly<Record<string, Data>>>>;
    };
    const [first] = Object.values(runs);
    const panels = option.scheme.columns;
    expect(panels).toBeLessThanOrEqual(8);
    const over = laidOver(option);
    const measured = ({ build }: Over, names: readonly string[]) => ({
      circuits: names.length,
      fullest: Math.max(
        ...names.map((name) => {
          const share = build.valueAt(`power.circuits.${name}.share`);
          if (!share?.known) throw new Error(`the share of ${name} is known`);
          return share.value;
        }),
      ),
    });
    const passing = [...sums(panels, 3)].flatMap((taken) => {
      let at = 0;
      const tried = ["a", "b", "c"].flatMap((name, index) => {
        const [from, count] = [at, taken[index] as number];
        at += count;
        const cells = count === 1 ? `A${from + 1}` : `A${from + 1}..A${from + count}`;
        return count === 0 ? [] : [[`P${index + 1}`, { ...first, from: name, panels: `display ${cells}` }] as const];
      });
      const inspected = over("/power/runs", Object.fromEntries(tried) as Data);
      const names = tried.map(([, { from }]) => String(from));
      return inspected.failing() ? [] : [measured(inspected, names)];
    });
    expect(passing.length).toBeGreaterThan(1);
    const drafted = over("/title", "as drafted");
    expect(drafted.failing()).toBeUndefined();
    const own = measured(drafted, [...new Set(Object.values(runs).map(({ from }) => String(from)))]);
    const fewest = Math.min(...passing.map(({ circuits }) => circuits));
    expect(own.circuits).toBe(fewest);
    const emptiest = Math.min(...passing.flatMap((each) => (each.circuits === fewest ? [each.fullest] : [])));
    expect(own.fullest).toBeCloseTo(emptiest, 9);
  });

  /** Feet along the beam of `BANNER`, whose middle of the face is at 12 ft. */
  const POINTS = [7.75, 9.25, 10.6, 13.4, 14.75, 16.25] as const;

  const HUNG_BY = [
    ["pipe-1.5-std", "beam-hang"],
    ["pipe-2-std", "beam-hang-2"],
  ] as const;

  test.each([
    ["over people, caught by a second suspension", "true", "900 lb"],
    ["with nobody below and nothing that catches", "false", "900 lb"],
  ])("no set of six points has fewer hangs than the one that is drafted: %s", (_, people, caught) => {
    const points = POINTS.map(
      (at, index) => `        F${index + 1}: {at: ${at} ft, structure: 500 lb, catch: ${caught}}\n`,
    );
    const wish = BANNER.replace(/ {6}points:\n(?: {8}F.*\n)+/u, `      points:\n${points.join("")}`)
      .replace("over-people: true", `over-people: ${people}`)
      .replace("girth: 40 in", "flange: 6 in\n      girth: 40 in");
    expect(wish).toContain("F6");
    const { options } = laidOutFirst(wish);
    const [option] = options;
    if (!option) throw new Error("the wish gives an option");
    const { bars } = option.scheme.matter.rigging as unknown as {
      readonly bars: { readonly header: Readonly<Record<string, Data>> };
    };
    const own = Object.keys(bars.header.hangs as object).length;
    const over = laidOver(option);
    expect(over("/title", "as drafted").failing()).toBeUndefined();
    const foot = 0.3048;
    const half = (option.scheme.columns * 0.5) / 2 / foot;
    const subsets = Array.from({ length: 2 ** POINTS.length }, (_each, bits) =>
      POINTS.filter((_point, at) => (bits >> at) & 1),
    ).filter(({ length }) => length >= 2 && length <= own);
    expect(subsets.length).toBeGreaterThan(10);
    const passing = subsets.flatMap((set) => {
      const left = Math.min(12 - half, set[0] as number) - 0.4;
      const right = Math.max(12 + half, set.at(-1) as number) + 0.4;
      return HUNG_BY.flatMap(([section, assembly]) => {
        const hangs = Object.fromEntries(
          set.map((at, index) => [
            `H${index + 1}`,
            { at: `${(at - left).toFixed(3)} ft`, assembly, structure: "500 lb" },
          ]),
        );
        const bar = {
          ...bars.header,
          section,
          length: `${(right - left).toFixed(3)} ft`,
          carries: { face: "display", from: `${(12 - half - left).toFixed(3)} ft` },
          hangs,
        };
        const found = over("/rigging/bars", { header: bar } as unknown as Data).failing();
        return found ? [] : [set.length];
      });
    });
    expect(passing.length).toBeGreaterThan(0);
    expect(own).toBe(Math.min(...passing));
  });
});
