// Runs every test; the reporter of tests/ prints the sources the checks rest on and the closing line.
import { run } from "./steps.mjs";

process.exitCode = run(
  "node_modules/vitest/vitest.mjs",
  "run",
  "--config",
  "tests/vitest.config.ts",
  ...process.argv.slice(2),
);
