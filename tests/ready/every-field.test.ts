import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { effort } from "../run/effort.js";
import { notEmpty } from "../run/not-empty.js";
import { decides, written } from "./corpus.js";
import { buildProperties } from "./judged.js";

/** Fields that no check depends on, each with the reason: the one list of them. */
const INFORMATION = parse(readFileSync(new URL("information.yaml", import.meta.url), "utf8")) as Readonly<
  Record<string, string>
>;

const ALL = buildProperties();
const JUDGED = ALL.filter((path) => !Object.hasOwn(INFORMATION, path));

/** Every field in a deep run; a few in an ordinary one, other ones each time. */
const tried = effort.deep
  ? JUDGED
  : (fc.sample(fc.shuffledSubarray(JUDGED, { minLength: 10, maxLength: 10 }), { seed: effort.seed, numRuns: 1 })[0] ??
    []);

describe("every field of a build document is judged, or said not to be", () => {
  const places = written();

  test.each(notEmpty(tried))("%s decides a check somewhere", (path) => {
    const where = places.get(path) ?? [];
    expect(where.length, `${path} is written in no case`).toBeGreaterThan(0);
    expect(where.some(decides), `${path} changes no check; judge it, or list it in information.yaml`).toBe(true);
  });

  test("what is listed is a field, and has a reason", () => {
    const unknown = Object.keys(INFORMATION).filter((path) => !ALL.includes(path));
    expect(unknown).toEqual([]);
    for (const reason of notEmpty(Object.values(INFORMATION))) expect(reason.length).toBeGreaterThan(10);
  });
});
