import { availableParallelism } from "node:os";
import { run } from "./steps.mjs";

/** Runs the tests against what was built a moment ago; returns the exit status. */
export function vitest(words) {
  process.env.PLUMBMARK_BUILT = "1";
  // Of its long series an ordinary run takes a part; who names files has all of them.
  if (words.every((word) => word.startsWith("-"))) process.env.PLUMBMARK_SERIES = "part";
  // One more than there are processors: many tests wait for the disk, for a registry or for a process.
  const workers = words.some((word) => word.startsWith("--maxWorkers"))
    ? []
    : [`--maxWorkers=${availableParallelism() + 1}`];
  return run("node_modules/vitest/vitest.mjs", "run", "--config", "tests/vitest.config.ts", ...workers, ...words);
}
