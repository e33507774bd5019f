import { writeSync } from "node:fs";
import { parentPort, workerData } from "node:worker_threads";

// Runs beside a plugin, in a thread of its own, so that it sees the process grow while the plugin is busy. A limit on
// the heap alone would not see buffers.

const {
  most: first,
  parent,
  token,
} = workerData as {
  readonly most: number;
  readonly parent: number;
  readonly token: string;
};
const EVERY = 15;
const end = (): void => void process.kill(process.pid, "SIGKILL");

let most = first;
parentPort?.on("message", (next: number) => {
  most = next;
  parentPort?.postMessage("heeded");
});

setInterval(() => {
  // Whoever inspects is gone: a plugin that never ends must not outlive them.
  if (process.ppid !== parent) end();
  if (process.memoryUsage.rss() <= most) return;
  writeSync(2, `\n${token} memory\n`);
  end();
}, EVERY);
