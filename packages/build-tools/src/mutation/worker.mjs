// Holds the bundled program and runs tests on it with one change at a time.
import { createRequire } from "node:module";
import { compileFunction } from "node:vm";
import { parentPort, workerData } from "node:worker_threads";
import { runTest, suite } from "./tests-shim.mjs";

const require = createRequire(import.meta.url);
globalThis.__outside = new Map();
for (const url of workerData.packages) globalThis.__outside.set(url, await import(url));
const program = compileFunction(workerData.code, ["require", "module", "exports"]);

/** Starts the program afresh; no file of tests has been read. */
function start(mutant) {
  globalThis.__mutant = mutant;
  const started = suite();
  globalThis.__tests = started.held;
  const module = { exports: {} };
  program(require, module, module.exports);
  return started;
}

const passes = async (test) => {
  try {
    await runTest(test);
    return true;
  } catch {
    return false;
  }
};

/** Runs everything unchanged, and tells which tests come past which mutant. */
async function survey() {
  let seen = new Set();
  const { testsOf, fileNames } = start((id) => {
    seen.add(id);
    return false;
  });
  const defined = fileNames().map((file) => ({ file, tests: testsOf(file) }));
  const atStart = [...seen];
  const found = [];
  for (const { file, tests } of defined)
    for (const test of tests) {
      seen = new Set();
      const from = performance.now();
      const sound = await passes(test);
      found.push({ file, name: test.name, sound, ms: performance.now() - from, past: [...seen] });
    }
  return { atStart, tests: found };
}

/** Files of tests read so far in this start of the program. */
const reader = ({ testsOf }) => {
  const read = new Map();
  return (file) => {
    if (!read.has(file)) read.set(file, new Map(testsOf(file).map((test) => [test.name, test])));
    return read.get(file);
  };
};

/** The first of the tests that fails with this change made. */
async function caughtBy(id, wanted) {
  try {
    const testsOf = reader(start((each) => each === id));
    for (const { file, name } of wanted) {
      const test = testsOf(file).get(name);
      // A list of cases has become another one.
      if (!test || !(await passes(test))) return { file, name };
    }
    return undefined;
  } catch {
    return { file: "", name: "the program does not start" };
  }
}

parentPort.on("message", async ({ id, wanted }) =>
  parentPort.postMessage(id === undefined ? await survey() : { id, by: await caughtBy(id, wanted) }),
);
