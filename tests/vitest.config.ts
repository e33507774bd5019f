import { readdirSync } from "node:fs";
import { availableParallelism, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { built, isBuiltFile } from "./run/built.js";
import { effort } from "./run/effort.js";
import Order from "./run/order.js";
import { some } from "./run/some.js";

const top = fileURLToPath(new URL("..", import.meta.url));
const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

const ALL = ["tests/**/*.test.ts", "packages/*/src/**/*.test.ts", "docs-site/src/**/*.test.ts"];
const NEVER = ["**/node_modules/**", "**/dist/**"];

/** Those that look at a site in a browser. */
const BROWSER = [
  "tests/site/{browser,injection,phone,print,print-scale,quotes,wishes-shown}.test.ts",
  "tests/site/drawings/layout.test.ts",
];

/** Those that start the command line, git, npm or the process of a plugin, and mostly wait for it. */
const PROCESS = [
  "tests/{bad-days,git,packages,plugins}/**/*.test.ts",
  "tests/architecture/types.test.ts",
  "tests/guide/samples.test.ts",
  "tests/editor/{live,neovim}/**/*.test.ts",
  "tests/fuzz/command-line.test.ts",
  "tests/kit/types.test.ts",
  "tests/site/write-site.test.ts",
  "packages/cli/src/**/*.test.ts",
];

const inFolder = (path: string): readonly string[] =>
  readdirSync(here(path))
    .filter((name) => name.endsWith(".test.ts"))
    .map((name) => `tests/${path}/${name}`);

/**
 * Long series of one kind: a fault at the steps of every writing, and one result by every way to it. An ordinary run has
 * a part of each series, another with every seed; a deep run has all, and so has one that is told which files it runs.
 */
const SERIES = [
  { files: inFolder("bad-days/writing"), share: 1 / 3 },
  {
    files: [
      "packages/cli/src/engine/engine.test.ts",
      "packages/cli/src/engine/workers/sheets-many.test.ts",
      "packages/cli/src/engine/workers/workers.test.ts",
      "packages/cli/src/commands/publish-again.test.ts",
    ],
    share: 1 / 2,
  },
] as const;
const NOT_THIS_TIME = (process.env.PLUMBMARK_SERIES === "part" ? SERIES : []).flatMap(({ files, share }) => {
  const taken = some(files, Math.ceil(files.length * share), effort.seed);
  return files.filter((path) => !taken.includes(path));
});

/** Those that have more to try than a quick run does: random cases, every step of a writing, what needs the network. */
const DEEP = [
  "tests/{fuzz,properties,shared}/**/*.test.ts",
  "tests/draft/{fold,optimal,property}.test.ts",
  "tests/draft/{command,search}.test.ts",
  "tests/reference/rigging/balance-by-programme.test.ts",
  "tests/editor/random-edits.test.ts",
  "tests/editor/{live,neovim}/**/*.test.ts",
  "tests/ready/{every-field,every-field-of-files,leaving-out}.test.ts",
  "tests/documents/asked-for.test.ts",
  "tests/guide/reference.test.ts",
  "tests/site/html.test.ts",
  "tests/mend/property.test.ts",
  "tests/bad-days/writing/**/*.test.ts",
  "tests/documents/{causes,kinds,missing,robustness,turns}.test.ts",
  "tests/documents/{record,starter,unsure,values-under}.test.ts",
  "tests/site/{hostile,notice}.test.ts",
  "tests/guide/readme.test.ts",
  "tests/rules/sentences.test.ts",
  "tests/site/drawings/well-formed.test.ts",
  "tests/venues/site.test.ts",
  "tests/git/{hook,many,staged}.test.ts",
  "tests/packages/packed.test.ts",
  "tests/bad-days/inputs/{changes,closed,paths}.test.ts",
  "tests/site/write-site.test.ts",
  "tests/plugins/**/*.test.ts",
  "packages/cli/src/**/{cache,engine,patterns,publish-again,sheets-many,workers}.test.ts",
  "packages/core/src/**/{outline,skeleton,front-matter,parse}.test.ts",
];

/** Those of a browser that look at every page in a deep run. */
const DEEP_BROWSER = ["tests/site/{browser,injection,phone,print,print-scale}.test.ts"];

// A run that has just built tests what was built: Node.js loads it as it is, in a third of the time that the sources
// take. Any other run tests the sources (the "source" export condition), so that no stale build can pass it.
const isBuilt = process.env.PLUMBMARK_BUILT === "1";
const conditions = [...(isBuilt ? [] : ["source"]), "import", "module", "default"];

/** As many as the command line allows, for a project with a number of its own. */
const asked = process.argv.findLast((word) => word.startsWith("--maxWorkers="))?.replace("--maxWorkers=", "");
const workersAsked = asked === undefined ? Number.POSITIVE_INFINITY : Number(asked);

const HOURS = 4 * 3_600_000;

// Libraries as the product has them: their builds for development check everything they do. This is for the resolver
// alone; what tests start is not to be told.
process.env.NODE_ENV = "production";

const shared = {
  root: top,
  isolate: false,
  ...(isBuilt ? { server: { deps: { external: [isBuiltFile] } } } : {}),
  unstubEnvs: true,
  env: { NODE_ENV: "test" },
  // An inspection makes many objects that soon are garbage: with room for them it takes a fifth less time.
  execArgv: ["--max-semi-space-size=128"],
  pool: "forks" as const,
  testTimeout: 60_000,
  hookTimeout: 120_000,
  setupFiles: [here("run/settings.ts")],
  provide: { effort, ofThisRun: join(tmpdir(), `plumbmark-run-${process.pid}`) },
  globalSetup: [here("run/clear.ts")],
  sequence: { groupOrder: 0 },
};

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions } },
  plugins: isBuilt ? [built(top)] : [],
  test: {
    root: top,
    // What was transformed once is read from the disk in the next run.
    experimental: { fsModuleCache: true },
    sequence: { sequencer: Order },
    reporters: ["default", here("run/reporter.ts")],
    projects: effort.deep
      ? [
          {
            extends: true,
            test: {
              ...shared,
              name: "deep",
              testTimeout: HOURS,
              hookTimeout: HOURS,
              include: DEEP,
              exclude: NEVER,
            },
          },
          {
            extends: true,
            test: {
              ...shared,
              name: "deep browser",
              testTimeout: HOURS,
              hookTimeout: HOURS,
              include: DEEP_BROWSER,
              exclude: NEVER,
              globalSetup: [...shared.globalSetup, here("run/browser.ts")],
            },
          },
        ]
      : [
          {
            extends: true,
            test: {
              ...shared,
              name: "unit",
              // Nothing in it waits: a worker more than there are processors only takes memory's time from the others.
              maxWorkers: Math.min(availableParallelism(), workersAsked),
              sequence: { groupOrder: 1 },
              include: ALL,
              exclude: [...NEVER, ...BROWSER, ...PROCESS],
            },
          },
          {
            extends: true, // Processes wait for one another where others work on the machine, too.
            test: {
              ...shared,
              name: "process",
              testTimeout: 240_000,
              include: PROCESS,
              exclude: [...NEVER, ...NOT_THIS_TIME],
            },
          },
          {
            extends: true,
            test: {
              ...shared,
              name: "browser",
              include: BROWSER,
              exclude: NEVER,
              globalSetup: [...shared.globalSetup, here("run/browser.ts")],
            },
          },
        ],
  },
});
