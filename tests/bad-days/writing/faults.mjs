// Loaded before the command (`node --import`): counts what it writes, and has the N-th step fail, or ends the process
// there. A plan comes in PLUMBMARK_FAULT:
//   at     which step, from 1; a step of nothing counts only
//   code   the error it fails with, after half of a file is written
//   on     every later step that needs room fails as well, as on a disk that is full
//   signal ends the process at that step, after half of a file is written
//   count  a file that is told how many steps there were
import fs, { writeFileSync } from "node:fs";
import { syncBuiltinESMExports } from "node:module";

let { at, code, on, signal, count } = JSON.parse(process.env.PLUMBMARK_FAULT ?? "{}");
const real = { writeFileSync, writeFile: fs.promises.writeFile, existsSync: fs.existsSync };

/** What takes room, and what only gives it back or changes names. */
const TAKING = ["writeFile", "mkdir", "mkdtemp", "link", "copyFile", "symlink", "appendFile", "cp"];
const OTHER = ["rename", "rm", "rmdir", "unlink", "chmod", "utimes"];
/** A full disk still gives back and renames. */
const FULL = new Set(["ENOSPC", "EDQUOT", "EFBIG"]);
const SAYS = { ENOSPC: "no space left on device", EIO: "i/o error", EROFS: "read-only file system" };

let steps = 0;

const fails = (takes) => steps === at || (on && steps > at && (takes || !FULL.has(code)));

function errorOf(syscall, path) {
  const message = `${code}: ${SAYS[code] ?? "refused"}, ${syscall} '${path}'`;
  return Object.assign(new Error(message), { code, syscall, path: String(path), errno: -1 });
}

const half = (content) => content.slice(0, content.length >> 1);

function die() {
  process.kill(process.pid, signal);
  // A handler may take its time; nothing else happens meanwhile.
  if (process.listenerCount(signal) === 0) Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 10_000);
}

/** Counts a step; gives whether it is to fail. */
function strikes(name, takes, [path, content]) {
  steps += 1;
  const now = fails(takes);
  if (now && name.startsWith("writeFile") && !real.existsSync(path)) real.writeFileSync(path, half(content));
  if (now && signal) die();
  return now && code !== undefined;
}

for (const [names, takes] of [
  [TAKING, true],
  [OTHER, false],
])
  for (const name of names) {
    const before = fs.promises[name];
    fs.promises[name] = async (...words) => {
      if (strikes(name, takes, words)) throw errorOf(name, words[0]);
      return before(...words);
    };
    const sync = `${name}Sync`;
    const beforeSync = fs[sync];
    fs[sync] = (...words) => {
      if (strikes(sync, takes, words)) throw errorOf(name, words[0]);
      return beforeSync(...words);
    };
  }
syncBuiltinESMExports();

/** For a program that tries many plans in one process. */
globalThis.plumbmarkFaults = {
  arm(plan) {
    ({ at, code, on, signal, count } = plan);
    steps = 0;
  },
  steps: () => steps,
};

process.on("exit", () => {
  if (count) real.writeFileSync(count, String(steps));
});
