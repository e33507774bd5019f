// Cost of publishing a thousand documents beside that of their Markdown alone, parsed and rendered with the same
// libraries: whole processes, ratios measured in one run. `node tests/bench/publish.mjs [documents] [--keep]`.
import { spawnSync } from "node:child_process";
import { appendFileSync, mkdtempSync, readdirSync, rmSync, statSync } from "node:fs";
import { availableParallelism, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { generate } from "./generate.mjs";

const COUNT = Number(process.argv.find((word) => /^\d+$/u.test(word)) ?? 1000);
const PROGRAM = fileURLToPath(new URL("../../packages/cli/dist/plumbmark.js", import.meta.url));
const MARKDOWN = fileURLToPath(new URL("markdown.mjs", import.meta.url));
const HISTORY = fileURLToPath(new URL("history.md", import.meta.url));
const USAGE =
  'process.on("exit",()=>{const u=process.resourceUsage();process.stderr.write(`\\n@${(u.userCPUTime+u.systemCPUTime)/1e6} ${u.maxRSS/1024}\\n`)})';
const WATCH = `data:text/javascript,${encodeURIComponent(USAGE)}`;
const scratch = mkdtempSync(join(tmpdir(), "plumbmark-bench-"));

/** Wall and processor seconds and the peak of memory in MB of one process. */
function once(...words) {
  const start = performance.now();
  const { status, stderr } = spawnSync(process.execPath, ["--import", WATCH, ...words], {
    encoding: "utf8",
    maxBuffer: 1e9,
  });
  const wall = (performance.now() - start) / 1000;
  const [, cpu, memory] = /@([\d.]+) ([\d.]+)\n$/u.exec(stderr) ?? [];
  if (status !== 0 || cpu === undefined) throw new Error(`${words.join(" ")}: ${stderr}`);
  return { wall, cpu: Number(cpu), memory: Number(memory) };
}

const sizeOf = (folder) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile())
    .reduce((sum, each) => sum + statSync(join(each.parentPath, each.name)).size, 0);

try {
  const [docs, few, site] = ["docs", "few", "site"].map((name) => join(scratch, name));
  generate(docs, COUNT);
  generate(few, 14);
  // Both have run once before they are measured.
  once(MARKDOWN, few);
  once(PROGRAM, "publish", few, "--to", join(scratch, "warm"));
  const alone = once(MARKDOWN, docs);
  const whole = once(PROGRAM, "publish", docs, "--to", site);
  const again = once(PROGRAM, "publish", docs, "--to", site);
  const ratio = (what, one) => [what, (one.wall / alone.wall).toFixed(2), (one.cpu / alone.cpu).toFixed(2)];
  const rows = [
    [...ratio(`publishing ${COUNT} documents, of their Markdown alone`, whole), "2"],
    [...ratio("the same again, of their Markdown alone", again), ""],
  ];
  const size = `${(sizeOf(site) / COUNT / 1000).toFixed(0)} kB a document, peak memory ${whole.memory.toFixed(0)} MB`;
  for (const [what, wall, cpu, asked] of rows) console.log(`${what}: wall ${wall}, processor ${cpu}, asked ${asked}`);
  console.log(size);
  const head = `\n## ${new Date().toISOString().slice(0, 10)}, publishing, ${availableParallelism()} processors, Node ${process.version}\n\n| what | wall | processor | asked |\n| --- | --- | --- | --- |\n`;
  const table = rows.map((row) => `| ${row.join(" | ")} |\n`).join("");
  if (process.argv.includes("--keep")) appendFileSync(HISTORY, `${head}${table}\n${size}.\n`);
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
