import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";

const TOP = fileURLToPath(new URL("../..", import.meta.url));

// The packages were compiled before any test began. The tests are as much again, and nothing waits for them.
test("the tests are typed as they are written", { timeout: 300_000 }, () => {
  const compiler = fileURLToPath(new URL("../../node_modules/typescript/bin/tsc", import.meta.url));
  const { status, stdout } = spawnSync(process.execPath, [compiler, "-b", "tests"], { cwd: TOP, encoding: "utf8" });
  expect({ status, stdout }).toEqual({ status: 0, stdout: "" });
});
