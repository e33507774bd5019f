import { chmodSync, statSync } from "node:fs";
import { join } from "node:path";
import type { InspectionRecord } from "@plumbmark/core";
import { expect, test } from "vitest";
import { committed, type Repository, unborn } from "./scratch.js";

const BANNER = "builds/over-stage-banner.md";
const NAME = "M. Finch";

const without = (repository: Repository, path = BANNER): string => {
  const text = repository.read(path).replace(/^approved: .*\n/mu, "");
  repository.write(path, text);
  return text;
};

test("a document that is ready but for its approval is approved, every other byte as it was", async () => {
  const repository = unborn();
  const text = without(repository);
  const open = await repository.plumbmark("inspect", BANNER);
  expect(open.status).toBe(1);
  const said = open.out.replace(/\s+/gu, " ");
  const code = /plumbmark approve builds\/over-stage-banner\.md --by NAME.* now, ([0-9A-Z]{4}-[0-9A-Z]{4})/u.exec(
    said,
  )?.[1];
  expect(code).toBeDefined();
  chmodSync(join(repository.folder, BANNER), 0o640);
  const told = await repository.plumbmark("approve", BANNER, "--by", NAME);
  expect(told).toMatchObject({ status: 0, err: "" });
  expect(told.out).toContain(code as string);
  const line = `approved: {by: ${NAME}, on: 2027-01-01, code: ${code}}\n`;
  expect(repository.read(BANNER)).toBe(text.replace(/^(prepared-by: .*\n)/mu, `$1${line}`));
  expect(statSync(join(repository.folder, BANNER)).mode & 0o777).toBe(0o640);
  expect((await repository.plumbmark("inspect", BANNER)).status).toBe(0);
  // Once more changes nothing but the day and the name.
  expect((await repository.plumbmark("approve", BANNER, "--by", "finch, m.")).status).toBe(0);
  expect(repository.read(BANNER)).toContain(`code: ${code}}`);
});

test.each([
  ["a draft", "status: for-build", "status: draft", NAME, /is a draft/u],
  ["what is not ready otherwise", "breaker: 20 A", "breaker: 1 A", NAME, /would not be ready/u],
  ["one's own work", "title:", "title:", "Tallow, R.", /would not be ready/u],
  ["by one who may not", "title:", "title:", "J. Ardle", /would not be ready/u],
  ["by nobody", "title:", "title:", "TBD", /names nobody/u],
])("%s is refused, and nothing is changed", async (_, from, to, by, says) => {
  const repository = unborn();
  without(repository);
  repository.change(BANNER, from, to);
  const text = repository.read(BANNER);
  const { status, err } = await repository.plumbmark("approve", BANNER, "--by", by);
  expect({ status, err }).toEqual({ status: 1, err: expect.stringMatching(says) });
  expect(repository.read(BANNER)).toBe(text);
});

test("what is no build document, a folder, or nobody's approval cannot be carried out", async () => {
  const repository = unborn();
  expect((await repository.plumbmark("approve", "README.md", "--by", NAME)).status).toBe(2);
  expect((await repository.plumbmark("approve", "builds", "--by", NAME)).status).toBe(2);
  expect((await repository.plumbmark("approve", "builds/none.md", "--by", NAME)).status).toBe(2);
  expect((await repository.plumbmark("approve", BANNER)).status).toBe(2);
});

test("another content fails, and git knows what was changed since", async () => {
  const repository = committed();
  repository.change(BANNER, "breaker: 20 A", "breaker: 25 A");
  repository.commit("Another breaker");
  repository.change("parts/panels.yaml", "mass: 7.9 kg", "mass: 7.5 kg");
  const record = JSON.parse((await repository.plumbmark("inspect", BANNER, "--as", "json")).out) as InspectionRecord;
  const [document] = record.documents;
  expect(document?.approval).toMatchObject({ state: "changed", by: NAME });
  expect(document?.approval?.changes).toContainEqual(expect.stringMatching(/breaker` was `20 A` and is `25 A`$/u));
  expect(document?.approval?.changes).toContainEqual(
    expect.stringMatching(/^part .*: `mass` was `7\.9 kg` and is `7\.5 kg`$/u),
  );
  const { out } = await repository.plumbmark("inspect", BANNER);
  expect(out.replace(/\s+/gu, " ")).toContain("Changed since it was approved in");
});
