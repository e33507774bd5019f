// Hands mutants to workers; one that never comes back has changed a loop, and a test would wait for ever too.
import { Worker } from "node:worker_threads";

const PATIENCE = 60_000;

const spawn = (workerData) => new Worker(new URL("./worker.mjs", import.meta.url), { workerData });

const ask = (worker, message, patience) =>
  new Promise((resolve, reject) => {
    const timer = patience && setTimeout(() => done(resolve)("time"), patience);
    const done = (settle) => (value) => {
      clearTimeout(timer);
      worker.removeAllListeners("message");
      worker.removeAllListeners("error");
      settle(value);
    };
    worker.on("message", done(resolve));
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

/** Runs every mutant; `testsFor` gives the tests to try, best first, `told` hears of each result. */
export async function runAll(program, mutants, { workers, testsFor, told }) {
  const queue = [...mutants];
  const one = async () => {
    let worker = spawn(program);
    for (let mutant = queue.shift(); mutant; mutant = queue.shift()) {
      const answer = await ask(worker, { id: mutant.id, wanted: testsFor(mutant) }, PATIENCE).catch(() => "time");
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
