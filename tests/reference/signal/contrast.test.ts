import { contrastRatio } from "@plumbmark/calc";
import { expect, test } from "vitest";
import { reference } from "../check.js";

for (const [one, other, ratio] of [
  ["#777777", "#ffffff", 4.4781],
  ["#767676", "#ffffff", 4.5422],
  ["#757575", "#ffffff", 4.6075],
  ["#595959", "#ffffff", 7.0047],
  ["#949494", "#ffffff", 3.0335],
  ["#959595", "#ffffff", 2.9953],
  ["#ff0000", "#ffffff", 3.9985],
  ["#0000ff", "#ffffff", 8.5925],
  ["#000000", "#ffffff", 21],
  ["#ffff00", "#000000", 19.556],
  ["#0000ff", "#000000", 2.444],
] as const)
  reference({
    name: `${one} on ${other}`,
    source: "WCAG 2.2 contrast ratio",
    basis: "arithmetic",
    got: () => contrastRatio(one, other),
    printed: ratio,
    within: 0.0005,
    because: "three decimals",
  });
reference({
  name: "#1e293b on white",
  source: "WCAG 2.2; in print as 14.63",
  basis: "published",
  got: () => contrastRatio("#1e293b", "#ffffff"),
  printed: 14.63,
  within: 0.005,
  because: "two decimals",
});

test("lists that circulate are wrong for #707070 (3.12) and #949494 (2.44): the formula is what counts", () => {
  expect(contrastRatio("#707070", "#ffffff")).toBeCloseTo(4.95, 2);
  expect(contrastRatio("#949494", "#ffffff")).toBeCloseTo(3.03, 2);
});
test("a colour that is none is refused", () => expect(() => contrastRatio("red", "#ffffff")).toThrow());
