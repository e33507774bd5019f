// Which tests to try on a mutant, and in which order: those that caught its neighbours first, then the quick ones.

const keyOf = ({ file, name }) => `${file}${name}`;

/** Checks of single figures: any of them may look at a table, and all of them together take little time. */
const isCheck = ({ file, ms }) => /tests\/(?:reference|architecture)\//u.test(file) && ms < 50;

/** For each source file the tests that come past a function of it. */
function nearness(mutants, past) {
  const near = new Map();
  for (const { id, path } of mutants)
    for (const test of past.get(id) ?? []) near.set(path, (near.get(path) ?? new Set()).add(keyOf(test)));
  return near;
}

/**
 * Tests for each mutant from the survey, and a memory of what caught what. A table is read when its file is and not
 * by a test: for a change of it those tests are tried that come past its file or one that takes from it, and every
 * check of a figure. `takers` gives the files that take from a file.
 */
export function chooser({ atStart, tests }, mutants, takers) {
  const always = new Set(atStart);
  const past = new Map();
  for (const test of tests) for (const id of test.past) past.set(id, [...(past.get(id) ?? []), test]);
  const near = nearness(mutants, past);
  const catches = new Map();

  const isNear = (path, test) => [path, ...(takers.get(path) ?? [])].some((each) => near.get(each)?.has(keyOf(test)));

  const testsFor = ({ id, path }) => {
    const candidates = always.has(id)
      ? tests.filter((test) => isCheck(test) || isNear(path, test))
      : (past.get(id) ?? []);
    const caught = catches.get(path) ?? new Map();
    const rank = (test) =>
      test.ms - 1e4 * Math.min(9, caught.get(keyOf(test)) ?? 0) - (near.get(path)?.has(keyOf(test)) ? 1e3 : 0);
    const ranked = candidates.map((test) => ({ test, at: rank(test) })).sort((a, b) => a.at - b.at);
    return ranked.map(({ test: { file, name } }) => ({ file, name }));
  };

  const learn = ({ path }, by) => {
    const known = catches.get(path) ?? new Map();
    known.set(keyOf(by), (known.get(keyOf(by)) ?? 0) + 1);
    catches.set(path, known);
  };
  return { testsFor, learn };
}
