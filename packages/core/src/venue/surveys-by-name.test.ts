import fc from "fast-check";
import { expect, test } from "vitest";
import { readSurveys } from "./survey.js";

const NAMES = ["marlow", "marlow-quay", "quay", "marlow-quay-2"] as const;

/** Front matter in which a name is written in the ways YAML 1.2 has for it, and some that are none. */
const written = (name: string): readonly string[] => [
  `survey: ${name}`,
  `survey: "${name}"`,
  `survey: '${name}' # the hall`,
  `"survey": ${name}`,
  `survey: "\\x${name.charCodeAt(0).toString(16)}${name.slice(1)}"`,
  `survey: >-\n  ${name}`,
  `{survey: ${name}, surveyed: {by: J. Ardle}}`,
  `survey: ${name}\nplaces: [`,
  `survey: ${name.toUpperCase()}`,
  `title: ${name}`,
  `title: &hall ${name}\nsurvey: *hall`,
  `survey: [${name}]`,
];

const files = fc
  .array(fc.constantFrom(...NAMES.flatMap(written)), { minLength: 1, maxLength: 6 })
  .map((texts) =>
    texts.map((yaml, at) => ({ path: `venues/${at}.md`, text: `---\n${yaml}\n---\n\nBeside marlow-quay.\n` })),
  );

test("a survey that is asked for by name alone is the one that is found among all", () => {
  fc.assert(
    fc.property(files, (given) => {
      const [alone, whole] = [readSurveys(given), readSurveys(given)];
      const all = new Map(whole.byName);
      expect([...all.keys()].every((name) => (NAMES as readonly string[]).includes(name))).toBe(true);
      for (const name of [...NAMES, "nowhere", "mar", "MARLOW", "marlow quay", "(", ""]) {
        expect(alone.byName.get(name)).toBe(all.get(name));
        expect(alone.byName.has(name)).toBe(all.has(name));
      }
      expect([...alone.byName.keys()]).toEqual([...all.keys()]);
      expect(alone.byName.size).toBe(all.size);
      expect([...alone.mistakes]).toEqual([...whole.mistakes]);
    }),
    { numRuns: 300 },
  );
});

test("a name is found in every way it may be written", () => {
  const found = written("marlow").map((yaml) => {
    const { byName } = readSurveys([{ path: "venues/a.md", text: `---\n${yaml}\n---\n` }]);
    return byName.has("marlow");
  });
  expect(found).toEqual([true, true, true, true, true, true, true, true, false, false, false, false]);
});
