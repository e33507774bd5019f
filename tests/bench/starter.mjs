// What a person waits for in the starter's repository: one staged document with its plugin and without, and the language
// server from its start to the first findings. Ratios measured in one run, of wall and of processor time; of Linux.
import { spawn, spawnSync } from "node:child_process";
import { appendFileSync, cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { starterRepository } from "@plumbmark/starter";
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from "vscode-jsonrpc/node.js";

const PROGRAM = fileURLToPath(new URL("../../packages/cli/dist/plumbmark.js", import.meta.url));
const DOCUMENT = "builds/over-stage-banner.md";
const scratch = mkdtempSync(join(tmpdir(), "plumbmark-bench-"));
const USAGE =
  'process.on("exit",()=>{const u=process.resourceUsage();process.stderr.write(`\\n@${(u.userCPUTime+u.systemCPUTime)/1e6}\\n`)})';
const WATCH = `data:text/javascript,${encodeURIComponent(USAGE)}`;

const git = (cwd, ...words) => {
  const own = ["-c", "user.name=Bench", "-c", "user.email=bench@example.org", ...words];
  const { status, stderr } = spawnSync("git", own, { cwd, encoding: "utf8" });
  if (status !== 0) throw new Error(stderr);
};

/** A copy of the starter under git. */
function copy(name, hasPlugin) {
  const folder = join(scratch, name);
  cpSync(starterRepository, folder, { recursive: true });
  const standard = join(folder, "house-standard.yaml");
  if (!hasPlugin) writeFileSync(standard, readFileSync(standard, "utf8").replace(/^rules-from: .*\n/mu, ""));
  git(folder, "init", "-q");
  git(folder, "add", "-A");
  git(folder, "commit", "-qm", "Everything");
  return folder;
}

/** Wall and processor seconds of a process that ends. */
function once(words, cwd) {
  const start = performance.now();
  const { status, stderr } = spawnSync(process.execPath, ["--import", WATCH, ...words], { cwd, encoding: "utf8" });
  const wall = (performance.now() - start) / 1000;
  const [, cpu] = /@([\d.]+)\n$/u.exec(stderr) ?? [];
  if (status === 2 || status === null || cpu === undefined) throw new Error(`${words.join(" ")}: ${stderr}`);
  return { wall, cpu: Number(cpu) };
}

/** Another content each time: a commit brings what was never inspected before. */
function stageOne(folder) {
  appendFileSync(join(folder, DOCUMENT), "\nSeen again.\n");
  git(folder, "add", "-A");
  return once([PROGRAM, "inspect", "--staged"], folder);
}

/** Processor seconds of a process that runs, all its threads together: fields 14 and 15 of `proc(5)`, 100 ticks a second. */
function processorOf(pid) {
  const fields = readFileSync(`/proc/${pid}/stat`, "utf8")
    .replace(/^.*\) /su, "")
    .split(" ");
  return (Number(fields[11]) + Number(fields[12])) / 100;
}

/** From the start of the server to the first findings of a document that is opened. */
async function serverStart(folder) {
  const start = performance.now();
  const child = spawn(process.execPath, [PROGRAM, "language-server"], {
    cwd: folder,
    stdio: ["pipe", "pipe", "ignore"],
  });
  const connection = createMessageConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  );
  const uri = pathToFileURL(join(folder, DOCUMENT)).href;
  const found = new Promise((resolve) => {
    connection.onNotification("textDocument/publishDiagnostics", (told) => told.uri === uri && resolve());
  });
  connection.listen();
  await connection.sendRequest("initialize", { processId: null, rootUri: null, capabilities: {} });
  void connection.sendNotification("initialized", {});
  const text = readFileSync(join(folder, DOCUMENT), "utf8");
  void connection.sendNotification("textDocument/didOpen", {
    textDocument: { uri, languageId: "markdown", version: 1, text },
  });
  await found;
  const spent = { wall: (performance.now() - start) / 1000, cpu: processorOf(child.pid) };
  connection.dispose();
  child.kill();
  return spent;
}

const median = (list) => list.toSorted((one, other) => one - other)[list.length >> 1];

/** Several runs in turn, over and over: other work on the machine then falls on all of them alike. */
async function inTurn(times, runs) {
  const found = Object.fromEntries(Object.keys(runs).map((name) => [name, []]));
  for (let round = 0; round < times; round += 1)
    for (const name of Object.keys(runs)) found[name].push(await runs[name]());
  return Object.fromEntries(
    Object.entries(found).map(([name, all]) => [
      name,
      { wall: median(all.map(({ wall }) => wall)), cpu: median(all.map(({ cpu }) => cpu)) },
    ]),
  );
}

const row = (what, one, other, bar) =>
  console.log(
    `${what.padEnd(62)} wall ${(one.wall / other.wall).toFixed(3).padStart(7)}  processor ${(one.cpu / other.cpu).toFixed(3).padStart(7)}  asked ${bar}`,
  );

try {
  const [plain, plugin] = [copy("plain", false), copy("plugin", true)];
  for (const folder of [plain, plugin]) stageOne(folder);
  const staged = await inTurn(7, { without: () => stageOne(plain), with: () => stageOne(plugin) });
  row("one staged document of the starter with its plugin, of without", staged.with, staged.without, "1.5");
  const started = await inTurn(5, {
    cold: () => once([PROGRAM, "inspect", "--no-cache"], plain),
    server: () => serverStart(plain),
  });
  row("start of the server to first findings, of inspecting it cold", started.server, started.cold, "1.5");
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
