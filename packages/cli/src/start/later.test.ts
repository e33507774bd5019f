import { spawnSync } from "node:child_process";
import { expect, test } from "vitest";
import { laterFor } from "./later.js";

test("V8 is only told what it knows: of anything else it would complain on standard error", () => {
  const flag = laterFor(process.versions.v8);
  const code = `require("node:v8").setFlagsFromString(${JSON.stringify(flag ?? "--interpreted-frames-native-stack")})`;
  const { status, stderr } = spawnSync(process.execPath, ["-e", code], { encoding: "utf8" });
  expect([status, stderr]).toEqual([0, ""]);
  // Of Node.js 20; 22; 24.
  expect(["11.3.244.8-node.30", "12.4.254.21-node.33", "13.6.233.10-node.28"].map(laterFor)).toEqual([
    "--interrupt-budget=1300000",
    undefined,
    undefined,
  ]);
});
