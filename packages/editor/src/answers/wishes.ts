import { type CheckEntry, type OpenRepository, readSurveys } from "@plumbmark/core";
import { readWish } from "@plumbmark/draft";

/** Whether a text of YAML is a wish: its name stands behind `wish`, where a part of that name would have a group. */
export const isWish = (text: string): boolean => /^wish[ \t]*:[ \t]+[^\s#{]/mu.test(text);

/**
 * What is wrong with a wish, as checks: it is no build that rules could be put to, but it has a schema, quantities and a
 * venue.
 */
export function mistakesInWish(repository: OpenRepository, path: string, text: string): readonly CheckEntry[] {
  const { byName } = readSurveys(repository.files.surveys ?? []);
  return readWish({ path, text }, byName).mistakes.map(({ rule, path: at, place, says, mend }) => ({
    rule,
    level: "shall",
    outcome: "fails",
    at: { path: at, ...place },
    says,
    mend,
    sources: [],
  }));
}
