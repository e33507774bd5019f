// Hands mutants to workers; one that never comes back has changed a loop, and a test would wait for ever too.
import { Worker } from "node:worker_threads";

/** For one test, at least; a test may take this many times what it took unchanged, for others use the machine as well. */
const PATIENCE = 60_000;
const TIMES = 20;

const spawn = (workerData) => new Worker(new URL("./worker.mjs", import.meta.url), { workerData });

/** Patience is with each test alone: what no test notices runs through all of them, and that is no endless loop. */
const ask = (worker, message) =>
  new Promise((resolve, reject) => {
    let timer;
    const done = (settle) => (value) => {
      clearTimeout(timer);
      worker.removeAllListeners("message");
      worker.removeAllListeners("error");
      settle(value);
    };
    const finish = done(resolve);
    worker.on("message", (told) => {
      clearTimeout(timer);
      if (told.begins === undefined) finish(told);
      else timer = setTimeout(() => finish("time"), Math.max(PATIENCE, TIMES * told.ms));
    });
    worker.on("error", done(reject));
    worker.postMessage(message);
  });

/** What every test comes past, unchanged. */
export async function surveyed(program) {
  const worker = spawn(program);
  try {
    return await ask(worker, {});
  } finally {
    await worker.terminate();
  }
}

/** Runs every mutant; `testsFor` gives the tests to try, best first, `told` hears of each result, `isOver` ends it early. */
export async function runAll(program, mutants, { workers, testsFor, told, isOver }) {
  const queue = [...mutants];
  const one = async () => {
    let worker = spawn(program);
    for (let mutant = queue.shift(); mutant && !isOver(); mutant = queue.shift()) {
      const answer = await ask(worker, { id: mutant.id, wanted: testsFor(mutant) }).catch(() => "time");
      if (answer === "time") {
        await worker.terminate();
        worker = spawn(program);
      }
      told(mutant, answer === "time" ? { file: "", name: "the time it takes" } : answer.by);
    }
    await worker.terminate();
  };
  await Promise.all(Array.from({ length: workers }, one));
}
