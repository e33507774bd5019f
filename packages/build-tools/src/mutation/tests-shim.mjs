// A small runner with the form of the tests' own: it only has to tell whether a test passes.

import { format } from "node:util";
import { JestAsymmetricMatchers, JestChaiExpect, JestExtend, setState } from "@vitest/expect";
import * as chai from "chai";

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

const expect = (value, message) => chai.expect(value, message);
Object.assign(expect, chai.expect);
Object.defineProperty(expect, "assertions", { value: () => {} });

setState({ assertionCalls: 0, isExpectingAssertions: false, expectedAssertionsNumber: null }, expect);

/** What a run hands to its tests: the same cases with every change, so that a change alone makes the difference. */
const PROVIDED = { effort: { deep: false, seed: 1, runs: 100 } };

const field = (value, path) => path.split(".").reduce((at, key) => at?.[key], value);

/**
 * The title of a case: `%s` and the like stand for the values in turn, `$name` for a field of the first. Nothing else of
 * the values is in it: a title with a drawing in it would change with every change of the drawing.
 */
function titled(name, values) {
  const told = String(name).replace(/\$([\p{L}_][\p{L}\p{N}_.]*)/gu, (whole, path) =>
    values[0] !== null && typeof values[0] === "object" ? String(field(values[0], path)) : whole,
  );
  const signs = [...told.matchAll(/%[sdifjoO]/gu)].length;
  return signs === 0 ? told : format(told, ...values.slice(0, signs));
}

const outermost = () => ({ name: "", before: [], after: [], each: [], behind: [] });

/** Files of tests, each read when it is first wanted: `testsOf(file)` gives its tests. */
export function suite() {
  const files = new Map();
  let tests = [];
  let group = outermost();
  const within = (name, define) => {
    const outer = group;
    group = { name: `${outer.name} > ${name}`, outer, before: [], after: [], each: [], behind: [] };
    define();
    group = outer;
  };
  const add = (name, body) => {
    const whole = `${group.name} > ${name}`;
    // Tests of one name are told apart by their order.
    const alike = tests.filter((each) => each.whole === whole).length;
    tests.push({ whole, name: alike === 0 ? whole : `${whole} (${alike + 1})`, body, group });
  };
  const table = (define) => (rows) => (name, body) => {
    for (const row of rows) {
      const values = Array.isArray(row) ? row : [row];
      define(titled(name, values), () => body(...values));
    }
  };
  const test = (name, options, body) => add(name, typeof options === "function" ? options : body);
  const describe = (name, define) => within(String(name), define);
  const skipped = () => {};
  Object.assign(test, {
    each: table(add),
    runIf: (yes) => (yes ? test : skipped),
    skipIf: (yes) => (yes ? skipped : test),
    skip: skipped,
  });
  Object.assign(describe, { each: table(within) });
  const hook = (list) => (body) => group[list].push(body);
  const held = {
    test,
    it: test,
    describe,
    expect,
    inject: (name) => PROVIDED[name],
    beforeAll: hook("before"),
    afterAll: hook("after"),
    beforeEach: hook("each"),
    afterEach: hook("behind"),
    file: (path, load) => files.set(path, load),
  };
  const testsOf = (file) => {
    tests = [];
    group = outermost();
    files.get(file)();
    return tests;
  };
  return { held, testsOf, fileNames: () => [...files.keys()] };
}

const ready = new WeakSet();

async function prepare(group) {
  if (!group || ready.has(group)) return;
  await prepare(group.outer);
  ready.add(group);
  for (const hook of group.before) await hook();
}

/** Runs one test; throws what the test throws. */
export async function runTest({ body, group }) {
  await prepare(group);
  const chain = [];
  for (let at = group; at; at = at.outer) chain.unshift(at);
  for (const { each } of chain) for (const hook of each) await hook();
  try {
    await body({ task: { meta: {} } });
  } finally {
    for (const { behind } of chain.reverse()) for (const hook of behind) await hook();
  }
}
