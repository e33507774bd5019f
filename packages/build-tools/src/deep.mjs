// Every property with full counts, every step of every writing, and what needs the network: about half an hour.
import { run } from "./steps.mjs";

process.env.PLUMBMARK_DEEP = "1";
process.exitCode = run(
  "node_modules/vitest/vitest.mjs",
  "run",
  "--config",
  "tests/vitest.config.ts",
  ...process.argv.slice(2),
);
