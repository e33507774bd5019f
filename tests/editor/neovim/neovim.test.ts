import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, inject, test, vi } from "vitest";
import { starter } from "../../documents/repository.js";
import { SINGLE_MISTAKES, type SingleMistake } from "../../documents/single-mistakes.js";
import { some } from "../../run/some.js";

// A real editor against the built server. It is Debian's package; where it is not installed, that is said and not passed.

const COMMAND = fileURLToPath(new URL("../../../packages/cli/dist/plumbmark.js", import.meta.url));
const SCRIPT = fileURLToPath(new URL("client.lua", import.meta.url));
const BANNER = "builds/over-stage-banner.md";

vi.setConfig({ testTimeout: 600_000, hookTimeout: 900_000 });

const isThere = spawnSync("nvim", ["--version"]).status === 0;
if (!isThere)
  process.stdout.write("Not run: tests/editor/neovim, for Neovim is not installed (Debian: apt-get install neovim).\n");

interface Shown {
  readonly line: number;
  readonly text: string;
  readonly code?: string;
  readonly message: string;
}

interface Result {
  readonly slip: string;
  readonly came: boolean;
  readonly shown: readonly Shown[];
  readonly applied?: string;
  readonly after?: readonly Shown[];
  readonly text?: string;
}

let folder: string;

/** The starter's documents as the single mistakes are made in them. */
function writeStarter(): void {
  const { documents, parts, stock, houseStandard, papers = [] } = starter();
  const standard = houseStandard && { ...houseStandard, text: houseStandard.text.replace(/^rules-from: .*\n/mu, "") };
  const letters = papers.map((path) => ({ path, text: "" }));
  for (const file of [...documents, ...parts, ...letters, stock, standard]) {
    if (!file) continue;
    mkdirSync(join(folder, dirname(file.path)), { recursive: true });
    writeFileSync(join(folder, file.path), file.text);
  }
}

interface Case {
  readonly slip: string;
  readonly file: string;
  readonly line: number;
  readonly text: string;
  readonly original: string;
  readonly mend: boolean;
}

function caseOf({ slip, from, to, file = BANNER, at }: SingleMistake, mend: boolean): Case {
  const original = readFileSync(join(folder, file), "utf8");
  const start = original.indexOf(from);
  if (start < 0) throw new Error(`${file} has no ${from}`);
  const text = original.slice(0, start) + to + original.slice(start + from.length);
  const same = [...to].findIndex((letter, index) => letter !== from[index]);
  const offset = at === undefined ? start + Math.max(0, same) : text.indexOf(at);
  return { slip, file, text, original, mend, line: text.slice(0, offset).split("\n").length };
}

function run(cases: readonly Case[]): readonly Result[] {
  const [work, results] = [join(folder, "../work.json"), join(folder, "../results.json")];
  writeFileSync(work, JSON.stringify({ cmd: [process.execPath, COMMAND, "language-server"], root: folder, cases }));
  const { status, stderr, error } = spawnSync(
    "nvim",
    ["--headless", "--clean", "-n", "-i", "NONE", "-c", `luafile ${SCRIPT}`],
    {
      cwd: folder,
      encoding: "utf8",
      env: {
        ...process.env,
        PLUMBMARK_WORK: work,
        PLUMBMARK_RESULTS: results,
        XDG_STATE_HOME: join(folder, "../state"),
      },
      timeout: 840_000,
    },
  );
  if (status !== 0 || error) throw new Error(`nvim ended with ${status}: ${stderr}`);
  return JSON.parse(readFileSync(results, "utf8")) as readonly Result[];
}

/** Mistakes whose code action is applied, too. */
const MENDED = ["misspelt key of a face", "number in quotes", "tab for blanks"];
const isMended = ({ slip }: SingleMistake): boolean => MENDED.includes(slip);
const { deep, seed } = inject("effort");
/** All in a deep run; else some, other ones in each run: what is found is the same as from the command line. */
const TRIED = deep
  ? SINGLE_MISTAKES
  : [
      ...SINGLE_MISTAKES.filter(isMended),
      ...some(
        SINGLE_MISTAKES.filter((each) => !isMended(each)),
        20,
        seed,
      ),
    ];

describe.skipIf(!isThere)("in Neovim", () => {
  let top: string;
  let results: readonly Result[];
  beforeAll(() => {
    top = realpathSync(mkdtempSync(join(tmpdir(), "plumbmark-nvim-")));
    folder = join(top, "docs");
    writeStarter();
    results = run(TRIED.map((mistake) => caseOf(mistake, isMended(mistake))));
  });
  afterAll(() => rmSync(top, { recursive: true, force: true }));

  test("every single mistake is shown at its place", () => {
    expect(results.map(({ slip }) => slip)).toEqual(TRIED.map(({ slip }) => slip));
    expect(results.length).toBeGreaterThan(20);
    expect(results.filter(({ came }) => !came).map(({ slip, shown }) => [slip, shown])).toEqual([]);
  });

  test("and says what was found", () => {
    const silent = results.filter(({ slip, shown }) => {
      const mistake = SINGLE_MISTAKES.find((each) => each.slip === slip) as SingleMistake;
      return !shown.some(({ message }) => message.includes(mistake.found) && message.includes(mistake.write));
    });
    expect(silent.map(({ slip, shown }) => [slip, shown])).toEqual([]);
  });

  test("a code action is applied, and nothing is found any more", () => {
    const applied = results.filter((result) => result.applied !== undefined);
    expect(applied.map(({ applied: title }) => title)).toContain("Write `trim` in place of `trimm`");
    // An approval is of the house standard as well, which is another here.
    const left = applied.flatMap(({ after }) => Object.values(after ?? {}).map(({ code }) => code));
    expect(left.filter((code) => code !== "document.sign-off")).toEqual([]);
    const banner = readFileSync(join(folder, BANNER), "utf8");
    expect(applied.map(({ text }) => text === banner)).toEqual([true, true, true]);
  });
});
