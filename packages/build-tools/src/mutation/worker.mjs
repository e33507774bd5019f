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

/**
 * Runs everything unchanged, and tells which tests come past which mutant. Each file has a start of its own: what several
 * files share is made by the first that asks for it, and would be seen with that one alone.
 */
async function survey() {
  let seen = new Set();
  const see = (id) => {
    seen.add(id);
    return false;
  };
  const files = [];
  for (const file of start(see).fileNames()) {
    seen = new Set();
    const begun = performance.now();
    const tests = start(see).testsOf(file);
    const [defined, loading] = [[...seen], performance.now() - begun];
    const found = [];
    for (const test of tests) {
      seen = new Set();
      const from = performance.now();
      const sound = await passes(test);
      found.push({ file, name: test.name, sound, ms: performance.now() - from, past: [...seen] });
    }
    files.push({ file, defined, loading, tests: found });
  }
  return files;
}

/** Files of tests read so far in this start of the program. */
const reader = ({ testsOf }) => {
  const read = new Map();
  return (file) => {
    if (!read.has(file)) read.set(file, new Map(testsOf(file).map((test) => [test.name, test])));
    return read.get(file);
  };
};

/** The first of the tests that fails with this change made; a test that is no longer there has not failed. */
async function caughtBy(id, wanted) {
  parentPort.postMessage({ begins: "the program", ms: 0 });
  try {
    const testsOf = reader(start((each) => each === id));
    for (const { file, name, ms } of wanted) {
      parentPort.postMessage({ begins: name, ms });
      const known = testsOf(file);
      // Where a list of cases has become another one, its new cases are tried.
      for (const test of known.has(name) ? [known.get(name)] : known.values())
        if (!(await passes(test))) return { file, name };
    }
    return undefined;
  } catch {
    return { file: "", name: "the program does not start" };
  }
}

parentPort.on("message", async ({ id, wanted }) =>
  parentPort.postMessage(id === undefined ? await survey() : { id, by: await caughtBy(id, wanted) }),
);
