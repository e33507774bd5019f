import fc from "fast-check";
import picomatch from "picomatch";
import { expect, test } from "vitest";
import { readPatterns } from "./patterns.js";

// What is asked first, to spare the matcher most paths, never decides otherwise than the matcher by itself.

const step = fc.constantFrom("builds", "a", "b.md", "c.yaml", ".d", ".git", "node_modules", "x.git", "B.MD", "ä b");
const path = fc.array(step, { minLength: 1, maxLength: 4 }).map((steps) => steps.join("/"));
const sign = fc.oneof(
  step,
  fc.constantFrom("*", "**", "*.md", "?.md", "b.*", "{a,b}*", "[ab].md", "+(a)", "@(a|b)", ""),
);
const pattern = fc
  .tuple(fc.constantFrom("", "", "./", "!"), fc.array(sign, { minLength: 1, maxLength: 4 }))
  .map(([before, steps]) => before + steps.join("/"))
  .filter((each) => !each.startsWith("/") && each !== "" && each !== "!");

test("a path fits a pattern when picomatch says so", () => {
  fc.assert(
    fc.property(fc.array(pattern, { maxLength: 3 }), path, (patterns, found) => {
      const wanted = patterns.filter((each) => !each.startsWith("!"));
      const refused = patterns.filter((each) => each.startsWith("!")).map((each) => each.slice(1));
      const ignore = ["**/node_modules/**", "**/.git/**", ...refused];
      expect(readPatterns(patterns).fits(found)).toBe(wanted.length > 0 && picomatch(wanted, { ignore })(found));
    }),
    { numRuns: 5 * (fc.readConfigureGlobal().numRuns ?? 100) },
  );
});
