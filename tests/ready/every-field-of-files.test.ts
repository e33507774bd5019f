import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { effort } from "../run/effort.js";
import { notEmpty } from "../run/not-empty.js";
import { ALL, decides, type Place, places } from "./fields-of-files.js";

/** Fields of parts, holdings, surveys and house standards that no check depends on, or in no case yet; with the reason. */
const INFORMATION = parse(readFileSync(new URL("information-of-files.yaml", import.meta.url), "utf8")) as Readonly<
  Record<string, string>
>;

const JUDGED = ALL.filter((field) => !Object.hasOwn(INFORMATION, field));

/** Every field in a deep run; a few in an ordinary one, other ones each time. */
const tried = effort.deep
  ? JUDGED
  : (fc.sample(fc.shuffledSubarray(JUDGED, { minLength: 5, maxLength: 5 }), { seed: effort.seed, numRuns: 1 })[0] ??
    []);

/** A field is written in hundreds of places: the first of the small repositories, of the whole starter, and of cases. */
function some(where: readonly Place[]): readonly Place[] {
  const isSmall = ({ files }: Place): boolean => files.documents.length < 5;
  const small = where.filter(isSmall);
  const large = where.filter((place) => !isSmall(place));
  return [...small.slice(0, 2), ...large.slice(0, 2), ...small.slice(2, 10), ...large.slice(2, 6)];
}

describe("every field of parts, holdings, surveys and house standards is judged, or said not to be", () => {
  const all = places();

  test.each(notEmpty(tried))(
    "%s decides a check somewhere",
    { timeout: effort.deep ? 3_600_000 : 240_000 },
    (field) => {
      const where = all.get(field) ?? [];
      expect(where.length, `${field} is written nowhere; write a case, or list it`).toBeGreaterThan(0);
      expect(some(where).some(decides), `${field} changes no check; judge it, or list it with a reason`).toBe(true);
    },
  );

  test("what is listed is a field, and has a reason", () => {
    expect(Object.keys(INFORMATION).filter((field) => !ALL.includes(field))).toEqual([]);
    for (const reason of notEmpty(Object.values(INFORMATION))) expect(reason.length).toBeGreaterThan(10);
  });
});
