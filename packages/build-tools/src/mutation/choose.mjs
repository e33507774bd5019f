// Which tests to try on a mutant, and in which order: those that caught its neighbours first, then the quick ones.
import { isTriedOn } from "./files.mjs";

const keyOf = ({ file, name }) => `${file}${name}`;

/** Checks of single figures: any of them may look at a table, and all of them together take little time. */
const isCheck = ({ file, ms }) => /tests\/(?:reference\/|architecture\/|rules\/settings\.)/u.test(file) && ms < 50;

/** Milliseconds. What takes longer than this would take most of the time of all tests. */
const TOO_SLOW = 1500;

export const isTooSlow = ({ ms }) => ms > TOO_SLOW;

/** A test that takes longer is tried where it comes past the change itself, and not for its neighbours' sake. */
const QUICK = 300;

/**
 * Tests for each mutant from the survey, and a memory of what caught what. A table is read when its file is and not
 * by a test: for a change of it those tests are tried that come past its file or one that takes from it, and every
 * check of a figure. `takers` gives the files that take from a file.
 */
export function chooser(surveyed, mutants, takers) {
  const early = new Set(mutants.filter((each) => each.early).map(({ id }) => id));
  const pathOf = new Map(mutants.map(({ id, path }) => [id, path]));
  const late = (ids) => new Set(ids.filter((id) => !early.has(id)));
  const files = surveyed.map(({ defined, tests }) => ({
    // What is worked out while a file's tests are listed is what any of them may look at.
    defined: late(defined),
    tests: tests.filter((test) => test.sound && !isTooSlow(test)).map((test) => ({ ...test, past: late(test.past) })),
  }));
  const tests = files.flatMap((each) => each.tests);
  /** The sources a test comes past. */
  const paths = new Map(
    files.flatMap(({ defined, tests: own }) =>
      own.map((test) => [test, new Set([...defined, ...test.past].map((id) => pathOf.get(id)))]),
    ),
  );
  const loading = new Map(surveyed.map((each) => [each.file, each.loading]));
  const catches = new Map();

  const isNear = (path, test) => [path, ...(takers.get(path) ?? [])].some((each) => paths.get(test).has(each));

  const ofTable = (path) => [
    tests.filter((test) => isNear(path, test)),
    tests.filter((test) => isCheck(test) && !isNear(path, test)),
  ];

  /** The tests that come past it; then the quick ones beside them, for what is kept is made by the first that asks. */
  const ofFunction = (id) => {
    const [past, beside] = [[], []];
    for (const { defined, tests: own } of files) {
      if (defined.has(id)) past.push(...own);
      else if (own.some((test) => test.past.has(id)))
        for (const test of own)
          if (test.past.has(id)) past.push(test);
          else if (test.ms < QUICK) beside.push(test);
    }
    return [past, beside];
  };

  const testsFor = ({ id, path }) => {
    const caught = catches.get(path) ?? new Map();
    /** Those of files that caught most come first, then those of files that are read quickly. */
    const rank = (test) => {
      const { file, ms } = test;
      return (
        ms +
        (loading.get(file) ?? 0) -
        1e6 * Math.min(9, caught.get(keyOf(test)) ?? 0) -
        1e5 * Math.min(9, caught.get(file) ?? 0)
      );
    };
    const ranked = (list) => list.map((test) => ({ test, at: rank(test) })).sort((a, b) => a.at - b.at);
    return (early.has(id) ? ofTable(path) : ofFunction(id))
      .flatMap((list) => ranked(list.filter(({ file }) => isTriedOn(file, path))))
      .map(({ test: { file, name, ms } }) => ({ file, name, ms }));
  };

  const learn = ({ path }, by) => {
    const known = catches.get(path) ?? new Map();
    for (const key of [keyOf(by), by.file]) known.set(key, (known.get(key) ?? 0) + 1);
    catches.set(path, known);
  };
  return { testsFor, learn };
}
