import fc from "fast-check";
import { expect, test } from "vitest";
import { readYaml } from "../document/yaml/yaml.js";
import { promisesOf, stayOf } from "../model/stock/bookings.js";
import { outlineOf } from "./outline.js";

const outlined = (yaml: string) => outlineOf({ path: "a.md", text: `---\n${yaml}\n---\n` });

/** The straightforward way: all of the front matter is read. */
const byAll = (yaml: string) => {
  const { data } = readYaml(yaml);
  const name = (data as Record<string, unknown> | null)?.build;
  const group = (data ?? {}) as Record<string, never>;
  const stay = stayOf(group["on-site"]);
  return {
    path: "a.md",
    ...(typeof name === "string" ? { name } : {}),
    ...(stay === undefined ? {} : { stay }),
    ...(group.status === "draft" ? { draft: true } : {}),
    promises: promisesOf("a.md", data),
  };
};

const FACE = "  wall: {columns: 3, rows: 2, spares: 1, lot: lot-1}";

test("a slip elsewhere does not set free what is promised", () => {
  const sound = `build: a\non-site: 2027-03-05\nfaces:\n${FACE}`;
  expect(outlined(`${sound}\npower: {circuits: [`)).toEqual(byAll(sound));
  expect(outlined(`${sound}\npower: {circuits: [`).promises).toMatchObject([{ lot: "lot-1", count: 7 }]);
});

test("what is read of a front matter tells the same as all of it", () => {
  const piece = fc.constantFrom(
    ..."build: a|build: |status: draft|on-site: 2027-03-05|on-site: |faces:|faces: &f|other: *f|title: x|rigging:".split(
      "|",
    ),
    ...`${FACE}|  deck:|    lot: lot-2|    columns: 1|    rows: 1|    spares: 0|  a: b|  # c|# c|  - x|- x||? a|: b`.split(
      "|",
    ),
    ..."title: |other: >-|  text: # no|text|'quoted': a|\"q|  w\"|'|{a: b}|{build: b|}|[|]|---|...|%x|!!map".split("|"),
    "title: |",
    "\tx",
    "key:value",
    "note: |\n  build: b\n\n  faces:",
    "build: 'a\n  b'",
  );
  let compared = 0;
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 12 }), fc.constantFrom("\n", "\r\n"), (lines, end) => {
      const yaml = lines.join(end);
      // Fences end the front matter, and one with a slip is not read at all the straightforward way.
      if (lines.includes("---") || readYaml(yaml).mistakes.length > 0) return;
      compared += 1;
      expect(outlined(yaml)).toEqual(byAll(yaml));
    }),
    { numRuns: 10 * (fc.readConfigureGlobal().numRuns ?? 100) },
  );
  expect(compared).toBeGreaterThan(100);
});
