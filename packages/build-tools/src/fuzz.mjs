// A long run of the properties of tests/fuzz: `npm run fuzz -- 200000 [seed]`. Prints cases, seed and time of each.
import { run } from "./steps.mjs";

const [cases = "200000", seed] = process.argv.slice(2);
process.env.PLUMBMARK_DEEP = "1";
process.env.PLUMBMARK_FUZZ = cases;
if (seed !== undefined) process.env.PLUMBMARK_SEED = seed;
process.exitCode = run("node_modules/vitest/vitest.mjs", "run", "--config", "tests/vitest.config.ts", "tests/fuzz");
