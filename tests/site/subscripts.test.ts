import { describe, expect, it } from "vitest";
import { starterPages } from "./starter-files.js";

const pages = starterPages();

// ISO 80000-1, 7.1.1: what tells quantities of one letter apart is a subscript. The moments against and for turning over
// are told apart so on the page of their rule, and have to be in the workings of a sheet.
describe("symbols", () => {
  it("stand with their subscripts in workings, in the words of rules and in worked examples", () => {
    for (const path of ["builds/riser-fascias.html", "rules/rigging.stack-stability.html", "formulas.html"])
      for (const below of ["r", "o"]) expect(pages.get(path), path).toContain(`M<sub>${below}</sub> `);
  });

  it("are nowhere shown with the line they are typed with", () => {
    const raw = [...pages]
      .filter(([path]) => path.endsWith(".html") && !path.startsWith("guide/"))
      .flatMap(([path, html]) =>
        [...html.matchAll(/>[^<]*?(?<![\p{L}\p{Nd}_-])(\p{L}_[\p{L}\p{Nd}]+)(?![\p{L}_])/gu)].map(
          ([, symbol]) => `${path}: ${symbol}`,
        ),
      );
    expect(raw).toEqual([]);
  });
});
