// Repositories of many documents: ratios measured in one run, printed as a table and added to the history beside.
import { spawnSync } from "node:child_process";
import { appendFileSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { availableParallelism, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { generate } from "./generate.mjs";

const TOP = fileURLToPath(new URL("../../", import.meta.url));
const PROGRAM = `${TOP}packages/cli/dist/plumbmark.js`;
const FLOOR = fileURLToPath(new URL("floor.mjs", import.meta.url));
const HISTORY = fileURLToPath(new URL("history.md", import.meta.url));
/** Ten thousand documents take ten minutes, a hundred thousand two hours: not every time. */
const MEMORY = process.argv.includes("--memory");
const LARGE = process.argv.includes("--large");
const ROUNDS = 3;
const scratch = mkdtempSync(join(tmpdir(), "plumbmark-bench-"));
const USAGE =
  'process.on("exit",()=>{const u=process.resourceUsage();process.stderr.write(`\\n@${(u.userCPUTime+u.systemCPUTime)/1e6} ${u.maxRSS/1024}\\n`)})';
const WATCH = `data:text/javascript,${encodeURIComponent(USAGE)}`;

/** Holds a process to one processor, as a machine that has no more would; of Linux. */
const ONE_PROCESSOR = ["taskset", "-c", "0"];

/** Wall and processor seconds and the peak of memory in MB of one process. */
function once(words, cwd, held = []) {
  const start = performance.now();
  const [program, ...before] = [...held, process.execPath];
  const { status, stderr } = spawnSync(program, [...before, "--import", WATCH, ...words], {
    cwd,
    encoding: "utf8",
    maxBuffer: 1e9,
  });
  const wall = (performance.now() - start) / 1000;
  const [, cpu, memory] = /@([\d.]+) ([\d.]+)\n$/u.exec(stderr) ?? [];
  if (status === 2 || status === null || cpu === undefined) throw new Error(`${words.join(" ")}: ${stderr}`);
  return { wall, cpu: Number(cpu), memory: Number(memory) };
}

const median = (list) => list.toSorted((one, other) => one - other)[list.length >> 1];
const middle = (all) =>
  Object.fromEntries(["wall", "cpu", "memory"].map((key) => [key, median(all.map((each) => each[key]))]));
const several = (times, run) => middle(Array.from({ length: times }, run));

/** Several runs in turn, over and over: other work on the machine then falls on all of them alike. */
function inTurn(times, runs) {
  const rounds = Array.from({ length: times }, () =>
    Object.fromEntries(Object.entries(runs).map(([name, run]) => [name, run()])),
  );
  return Object.fromEntries(Object.keys(runs).map((name) => [name, middle(rounds.map((each) => each[name]))]));
}

const git = (cwd, ...words) => {
  const { status, stderr } = spawnSync(
    "git",
    ["-c", "user.name=Bench", "-c", "user.email=bench@example.org", ...words],
    { cwd, encoding: "utf8" },
  );
  if (status !== 0) throw new Error(stderr);
};

const rows = [];
const row = (what, one, other, bar) => {
  const [wall, cpu] = [one.wall / other.wall, one.cpu / other.cpu];
  rows.push({ what, wall, cpu, bar });
  console.log(
    `${what.padEnd(62)} wall ${wall.toFixed(3).padStart(7)}  processor ${cpu.toFixed(3).padStart(7)}  asked ${bar}`,
  );
};

const memories = [];
const memory = (size, used, hundred) => {
  const ratio = (used.memory / hundred.memory).toFixed(2);
  memories.push(`| peak memory, 100 to ${size} | ${ratio} | | 1.5 |`);
  console.log(`peak memory, 100 to ${size}: ${ratio} (asked 1.5), ${used.memory.toFixed(0)} MB`);
};

function repository(count) {
  const folder = join(scratch, String(count));
  generate(folder, count);
  return folder;
}

const inspectCold = (folder) => once([PROGRAM, "inspect", "--no-cache"], folder);

try {
  const thousand = repository(1000);
  git(thousand, "init", "-q");
  git(thousand, "add", "-A");
  git(thousand, "commit", "-qm", "Everything");
  const { floor, cold, floorOfOne, coldOfOne } = inTurn(ROUNDS, {
    floor: () => once([FLOOR, "parse", thousand], thousand),
    cold: () => inspectCold(thousand),
    floorOfOne: () => once([FLOOR, "parse", thousand], thousand, ONE_PROCESSOR),
    coldOfOne: () => once([PROGRAM, "inspect", "--no-cache"], thousand, ONE_PROCESSOR),
  });
  once([PROGRAM, "inspect"], thousand);
  const { hashing, warm } = inTurn(5, {
    hashing: () => once([FLOOR, "hash", thousand], thousand),
    warm: () => once([PROGRAM, "inspect"], thousand),
  });
  const staged = readdirSync(join(thousand, "builds/0003"))[0];
  // Another content each time: a commit brings what was never inspected before.
  const stageOne = () => {
    appendFileSync(join(thousand, "builds/0003", staged), "\nSeen again.\n");
    git(thousand, "add", "-A");
    return once([PROGRAM, "inspect", "--staged"], thousand);
  };
  stageOne();
  const { nothing, one } = inTurn(11, { nothing: () => once(["-e", "0"], thousand), one: stageOne });
  row("1,000 documents cold, of only parsing them on one thread", cold, floor, "1.0 wall on two cores");
  row("the same on one processor, of parsing them there", coldOfOne, floorOfOne, "1.25 wall on one");
  row("nothing changed, of cold", warm, cold, "0.05");
  row("nothing changed, of reading and hashing the files", warm, hashing, "3");
  row("one staged document of 1,000, of `node -e 0`", one, nothing, "5");
  const hundred = several(3, () => inspectCold(repositoryOnce(100)));
  const sizes = [...(MEMORY || LARGE ? [10_000] : []), ...(LARGE ? [100_000] : [])];
  const each = (used, count) => ({ wall: used.wall / count, cpu: used.cpu / count });
  row("time for each document, 100 to 1,000", each(cold, 1000), each(hundred, 100), "1.2");
  memory("1,000", cold, hundred);
  for (const size of sizes) {
    const used = inspectCold(repositoryOnce(size));
    const shown = size.toLocaleString("en");
    row(`time for each document, 100 to ${shown}`, each(used, size), each(hundred, 100), "1.2");
    memory(shown, used, hundred);
  }
  const cells = rows.map(({ what, wall, cpu, bar }) => `| ${what} | ${wall.toFixed(3)} | ${cpu.toFixed(3)} | ${bar} |`);
  const head = `\n## ${new Date().toISOString().slice(0, 10)}, ${availableParallelism()} processors, Node ${process.version}\n\n| what | wall | processor | asked |\n|---|---|---|---|\n`;
  if (process.argv.includes("--keep")) appendFileSync(HISTORY, `${head}${cells.join("\n")}\n${memories.join("\n")}\n`);
} finally {
  rmSync(scratch, { recursive: true, force: true });
}

function repositoryOnce(count) {
  const folder = join(scratch, String(count));
  if (!readdirSync(scratch).includes(String(count))) generate(folder, count);
  return folder;
}
