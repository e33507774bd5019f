// A long run of the properties of tests/fuzz: `npm run fuzz -- 200000 [seed]`. Prints cases, seed and time of each.
import { run } from "./steps.mjs";

const [cases = "200000", seed = String(Date.now() % 1_000_000_000)] = process.argv.slice(2);
process.env.PLUMBMARK_FUZZ = cases;
process.env.PLUMBMARK_FUZZ_SEED = seed;
process.exitCode = run("node_modules/vitest/vitest.mjs", "run", "--config", "tests/vitest.config.ts", "tests/fuzz");
