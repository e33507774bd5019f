import { chain80, slingColours, slingLegLoad, slingModes } from "@plumbmark/calc";
import { expect, test } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { reference } from "../check.js";

// Two legs carry what brings each to its own WLL: 2 × WLL × sin of the angle from horizontal.
const twoLegs: readonly [string, readonly number[]][] = [
  ["9/32", [6100, 4900, 3500]],
  ["3/8", [12300, 10000, 7100]],
  ["1/2", [20800, 17000, 12000]],
];
for (const [size, printed] of twoLegs)
  reference({
    name: `two legs of ${size} in chain at 60, 45 and 30°`,
    source: "maker tables to ASTM A906/A391",
    basis: "published",
    printed,
    within: 100,
    because: "tables are printed to 100 lb",
    got: () => {
      const leg = chain80.find((row) => row.size === size)!.pounds;
      return [60, 45, 30].map((α) => leg / slingLegLoad.compute({ W: 1, n: 2, α }));
    },
  });

reference({
  name: "green sling choked, in a parallel basket, on two legs at 30° from vertical",
  source: "EN 1492-2 / LEEA",
  basis: "published",
  printed: [1.6, 4, 2.8],
  within: 1e-9,
  got: () =>
    [slingModes.choke, slingModes["basket-parallel"], slingModes["two-leg-to-45"]].map((m) => m * slingColours.green),
});

reference({
  name: "chain, sum of the printed column",
  source: "maker tables to ASTM A906/A391",
  basis: "arithmetic",
  printed: 2100 + 3500 + 4500 + 7100 + 12000 + 18100 + 28300,
  got: () => chain80.reduce((sum, row) => sum + row.pounds, 0),
});

test("chain is stronger the thicker it is", () => {
  notEmpty(chain80).forEach((row, i) => {
    if (i > 0) expect(row.pounds).toBeGreaterThan(chain80[i - 1]!.pounds);
  });
});
