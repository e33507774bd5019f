// Which tests to try on a mutant, and in which order: those that caught its neighbours first, then the quick ones.

const keyOf = ({ file, name }) => `${file}${name}`;

/** Files of tests that inspect whole documents while they are read; they come last. */
const SLOW = /tests\/(?:documents|takeoff)\//u;

/** Tests for each mutant from the survey, and a memory of what caught what. */
export function chooser({ atStart, tests }, mutants) {
  const always = new Set(atStart);
  const past = new Map();
  for (const test of tests) for (const id of test.past) past.set(id, [...(past.get(id) ?? []), test]);
  // A table is read when its file is, and not by a test: those that come past the file's functions are near it.
  const near = new Map();
  for (const { id, path } of mutants)
    for (const test of past.get(id) ?? []) near.set(path, (near.get(path) ?? new Set()).add(keyOf(test)));
  const catches = new Map();

  const testsFor = ({ id, path }) => {
    const candidates = always.has(id) ? tests : (past.get(id) ?? []);
    const caught = catches.get(path) ?? new Map();
    const rank = (test) =>
      test.ms +
      (SLOW.test(test.file) ? 1e5 : 0) -
      1e4 * Math.min(9, caught.get(keyOf(test)) ?? 0) -
      (near.get(path)?.has(keyOf(test)) ? 1e3 : 0);
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
