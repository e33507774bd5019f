import { describe, expect, test } from "vitest";
import { suits } from "../../packages/draft/src/search/shapes.js";
import { laidOut } from "./drafting.js";

/** A wish for a size alone, out of the catalogue, whose panels are half a metre square. */
const wish = (size: string): string => `wish: board
title: Board
practice: iec
size: ${size}
support: stacked
shows: colour
out-of: catalogue
`;

const said = (size: string): string => {
  const { fellOut, options } = laidOut(wish(size));
  return [
    ...fellOut.map(({ says }) => says),
    ...options.map(({ scheme }) => `${scheme.columns} × ${scheme.rows}`),
  ].join("; ");
};

describe("a size of whole panels", () => {
  test.each([
    // Half of 0.5 m is 0.25 m; a tenth of 4 m is 0.4 m.
    ["about 1.2 m is 1 m, of panels of 0.5 m", 1.2, 1, true],
    ["and not 1.5 m", 1.2, 1.5, false],
    ["about 1.25 m is either", 1.25, 1.5, true],
    ["about 4 m is 3.6 m, if panels were that small", 4, 3.6, true],
    ["and not 3.5 m", 4, 3.5, false],
  ])("%s", (_, length, side, is) => {
    expect(suits({ how: "about", length }, side, 0.5)).toBe(is);
  });

  test("a wish for about so much always has a face of whole panels", () => {
    expect(said("{width: about 2 m, height: about 1.2 m}")).toContain("4 × 2");
    expect(said("{width: about 2.2 m, height: about 1.3 m}")).toContain("4 × 3");
  });

  test("what whole panels come to is told where a size is none of theirs", () => {
    expect(said("{width: exactly 2.3 m, height: at most 1 m}")).toContain(
      "Of panels of 500 mm × 500 mm the width comes to 2 m or 2.5 m, and exactly 2.3 m is asked for.",
    );
    expect(said("{width: at most 2 m, height: at most 0.3 m}")).toContain(
      "the height comes to 500 mm at least, and at most 300 mm is asked for.",
    );
  });
});
