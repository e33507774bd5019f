import { chownSync, mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { disk } from "../source/disk.js";
import { findStandard, STANDARD } from "./find-standard.js";

let top: string;
beforeEach(() => {
  top = realpathSync(mkdtempSync(join(tmpdir(), "plumbmark-standard-")));
  mkdirSync(join(top, "docs/builds"), { recursive: true });
});
afterEach(() => rmSync(top, { recursive: true }));

const put = (folder: string): string => {
  const path = join(top, folder, STANDARD);
  writeFileSync(path, "house-standard: House\n");
  return path;
};

const NOBODY = 65_534;
const isRoot = process.getuid?.() === 0;

test("outside git the topmost one of the same owner is used, and it is told which", async () => {
  const [upper, lower] = [put(""), put("docs")];
  const { path, remarks } = await findStandard(join(top, "docs/builds"), disk);
  expect(path).toBe(upper);
  expect(remarks).toEqual([`The house standard ${upper} is used, which stands above ${lower}.`]);
  rmSync(upper);
  expect(await findStandard(join(top, "docs/builds"), disk)).toEqual({ path: lower, remarks: [] });
});

test.runIf(isRoot)("one of somebody else above is not used, with or without one of our own", async () => {
  const upper = put("");
  chownSync(upper, NOBODY, NOBODY);
  const without = await findStandard(join(top, "docs/builds"), disk);
  expect(without.path).toBeUndefined();
  expect(without.remarks.join()).toContain(`${upper} belongs to somebody else`);
  const lower = put("docs");
  expect((await findStandard(join(top, "docs/builds"), disk)).path).toBe(lower);
});

test.runIf(isRoot)("nothing beyond one of somebody else is used either", async () => {
  put("");
  const foreign = put("docs");
  chownSync(foreign, NOBODY, NOBODY);
  expect((await findStandard(join(top, "docs/builds"), disk)).path).toBeUndefined();
});

test("under git the topmost one of the work tree is used, and nothing is told", async () => {
  put("");
  const own = put("docs");
  mkdirSync(join(top, "docs/.git"));
  expect(await findStandard(join(top, "docs/builds"), disk)).toEqual({ path: own, remarks: [] });
});
