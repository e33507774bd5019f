// What the extension point costs: inspections with plugin rules that do nothing and with rules that do a known amount
// of work, measured in one run against the same inspection without plugins. Ratios, never a limit that a test waits for.
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { starterRepository } from "@plumbmark/starter";

const PLUMBMARK = fileURLToPath(new URL("../../packages/cli/dist/plumbmark.js", import.meta.url));
const DOCUMENTS = 20;
const WORK = 2;

const folder = mkdtempSync(join(tmpdir(), "plumbmark-bench-"));
cpSync(join(starterRepository, "parts"), join(folder, "parts"), { recursive: true });
cpSync(join(starterRepository, "stock.yaml"), join(folder, "stock.yaml"));
mkdirSync(join(folder, "builds"));
const banner = readFileSync(join(starterRepository, "builds/over-stage-banner.md"), "utf8");
for (let index = 0; index < DOCUMENTS; index += 1)
  writeFileSync(join(folder, `builds/${index}.md`), banner.replace(/^build: .*$/mu, `build: banner-${index}`));

/** A plugin of so many rules; each is busy for so many milliseconds on each document. */
const plugin = (rules, milliseconds) => `import { is, plugin, rule } from "@plumbmark/kit";
const one = (index) => rule({ id: \`bench.rule-\${index}\`, states: "S.", level: "note", why: "w", judged: "j", sources: ["house"],
  *checks({ build }) {
    const end = performance.now() + ${milliseconds};
    while (performance.now() < end);
    yield is(build, { holds: true, says: "It was looked at." });
  } });
export default plugin({ kit: 1, rules: Array.from({ length: ${rules} }, (_, index) => one(index)) });\n`;

function cost(rules, milliseconds) {
  const named = rules > 0 ? 'rules-from: ["./plugin.mjs"]\n' : "";
  writeFileSync(join(folder, "house-standard.yaml"), `house-standard: Bench\n${named}`);
  writeFileSync(join(folder, "plugin.mjs"), plugin(rules, milliseconds));
  const times = Array.from({ length: 3 }, () => {
    const start = performance.now();
    const { status, stderr } = spawnSync(process.execPath, [PLUMBMARK, "inspect", "--no-cache", "--as", "json"], {
      cwd: folder,
      maxBuffer: 1e9,
    });
    if (status !== 0 && status !== 1) throw new Error(String(stderr));
    return performance.now() - start;
  });
  return Math.min(...times);
}

const shown = (milliseconds) => `${milliseconds.toFixed(0)} ms`;

try {
  const [none, one, idle, busy] = [cost(0, 0), cost(1, 0), cost(50, 0), cost(50, WORK)];
  const work = 50 * DOCUMENTS * WORK;
  console.log(`${DOCUMENTS} documents without plugins: ${shown(none)}`);
  console.log(`with a plugin of 1 rule that does nothing: ${shown(one)}, ${(one / none).toFixed(2)} times`);
  console.log(
    `with a plugin of 50 rules that do nothing: ${shown(idle)}, ${(idle / one).toFixed(2)} times that of 1 rule`,
  );
  console.log(
    `with 50 rules that work ${work} ms in all: ${shown(busy)}, of which ${((busy - idle) / work).toFixed(2)} times the work`,
  );
} finally {
  rmSync(folder, { recursive: true, force: true });
}
