import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { InspectionRecord } from "@plumbmark/core";
import { expect, test } from "vitest";
import { plumbmark } from "../../plumbmark.js";
import { SMALL, small } from "./small.js";

const BUILD = SMALL["builds/a.md"].replace(
  "status: draft\n",
  "status: draft\nfaces: {f: {panel: tile, columns: 1, rows: 1, lot: two}}\n",
);
const { "stock.yaml": ONE, ...REST } = SMALL;

/** A repository whose holdings are as `stock` says, in two files; its build names a lot of the second. */
const holdings = (stock: string): string =>
  small({
    ...REST,
    "builds/a.md": BUILD,
    "stock/one.yaml": ONE,
    "stock/two.yaml": "lots:\n  two: {panel: tile, batch: b2, count: 4}\n",
    "house-standard.yaml": SMALL["house-standard.yaml"].replace("stock: stock.yaml", `stock: ${stock}`),
  });

const found = async (folder: string, ...words: string[]) => {
  const { out, err, status } = await plumbmark(folder, ["inspect", "--as", "json", ...words]);
  expect(err).toBe("");
  const { documents } = JSON.parse(out) as InspectionRecord;
  const told = documents.flatMap(({ file, checks }) =>
    checks
      .filter(({ outcome }) => outcome === "fails")
      .map(({ says, at }) => `${file}:${at.line}:${at.column}: ${says}`),
  );
  return { told: told.filter((line) => /lot|stock|file|names/u.test(line)), status };
};

test.each(["stock/*.yaml", "[stock/one.yaml, stock/two.yaml]", '["stock/*.yaml", "!stock/three.yaml"]'])(
  "holdings named as %s are read together",
  async (stock) => expect((await found(holdings(stock), "--no-cache")).told).toEqual([]),
);

test("a lot of a file that is not named is not there", async () => {
  const { told } = await found(holdings("[stock/one.yaml]"), "--no-cache");
  expect(told).toEqual([expect.stringMatching(/^builds\/a\.md:\d+:\d+: .*two/u)]);
});

test.each([
  ["[stock/one.yaml, stock/two.yaml, stock/three.yaml]", /:3:41: `stock` names `stock\/three\.yaml`. The file is not/u],
  ["stock.yaml/*.yaml", /:3:8: No file matches `stock\.yaml\/\*\.yaml`, one of its `stock`\./u],
  ["[stock/*.yaml, other/*.yaml]", /:3:23: No file matches `other\/\*\.yaml`, one of its `stock`\./u],
])("`stock: %s` names what is not there, and that is told at its place", async (stock, line) => {
  const { told, status } = await found(holdings(stock), "--no-cache");
  expect(told.filter((each) => each.startsWith("house-standard.yaml"))).toEqual([expect.stringMatching(line)]);
  expect(status).toBe(1);
});

test("what is kept is looked at again when the second of the files changes", async () => {
  const folder = holdings("stock/*.yaml");
  expect((await found(folder)).told).toEqual([]);
  writeFileSync(join(folder, "stock/two.yaml"), "lots:\n  three: {panel: tile, batch: b2, count: 4}\n");
  expect((await found(folder)).told).toEqual([expect.stringMatching(/^builds\/a\.md:\d+:\d+: .*two/u)]);
});
