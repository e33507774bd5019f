import { type InspectionRecord, schemas } from "@plumbmark/core";
import Ajv2020 from "ajv/dist/2020.js";
import { expect, test } from "vitest";
import { committed } from "./scratch.js";

const BANNER = "builds/over-stage-banner.md";
const FASCIAS = "builds/riser-fascias.md";
const valid = new Ajv2020.default({ strict: false }).compile(schemas.recordSchema);

/** Changes one build for the worse, mends another, adds one and takes one away. */
async function changed() {
  const repository = committed();
  repository.change(FASCIAS, "breaker: 15 A", "breaker: 1 A");
  repository.commit("Before");
  repository.git("tag", "before");
  repository.change(FASCIAS, "breaker: 1 A", "breaker: 15 A");
  repository.change(BANNER, "breaker: 20 A", "breaker: 1 A");
  repository.write("builds/new.md", "---\nbuild: new\nstatus: draft\n---\n# New\n");
  repository.remove("builds/small-screen.md");
  return repository;
}

test("tells what broke, what became ready, what is new and what is gone", async () => {
  const repository = await changed();
  const { status, out } = await repository.plumbmark("inspect", "--against", "before");
  expect(status).toBe(1);
  expect(out).toMatch(/over-stage-banner\.md {3}not ready, was ready\n/u);
  expect(out).toMatch(/margin {2}.* \(power\.circuit-load\), was /u);
  expect(out).toMatch(/stands against it now\n(?: {4}.*\n)* {4}SHALL +power\.circuit-load/u);
  expect(out).toMatch(/riser-fascias\.md {3}ready, was not ready/u);
  expect(out).toMatch(/new\.md {3}new, /u);
  expect(out).toMatch(/small-screen\.md {3}gone, was /u);
  expect(out).not.toContain("side-strips.md   ready as before");
});

test("tells a change of weight and power in the document's own units, counted by hand", async () => {
  const repository = committed();
  // Something more that hangs, a load of 2.4 kg on the bar, and tiles of 140 W in place of 133 W: six of them.
  repository.change(BANNER, "    header:\n", "    header:\n      other-load: 2.4 kg\n");
  repository.change("parts/panels.yaml", "maximum: 133 W", "maximum: 140 W");
  const { out } = await repository.plumbmark("inspect", "--as", "json", "--against", "HEAD");
  const record = JSON.parse(out) as InspectionRecord;
  expect({ valid: valid(record), errors: valid.errors ?? [] }).toEqual({ valid: true, errors: [] });
  const entry = record.against?.documents.find(({ file }) => file === BANNER);
  const pounds = (text: string | undefined): number => Number(/^([\d.,]+) lb$/u.exec(text ?? "")?.[1]);
  // 2.4 kg is 5.29 lb (1 lb = 0.45359237 kg, NIST SP 811); both totals are printed to a tenth of a pound.
  expect(Math.abs(pounds(entry?.weight?.is) - pounds(entry?.weight?.was) - 5.29)).toBeLessThan(0.11);
  expect(entry?.power).toEqual({ was: "798 W", is: "840 W" });
});

test("of a revision without a docs repository, and of a house standard, it says what it can", async () => {
  const repository = committed();
  expect((await repository.plumbmark("inspect", "--against", "nowhere")).err).toContain(
    "There is no revision `nowhere` here.",
  );
  const { status, out } = await repository.plumbmark("inspect", "--against", "house-standard.yaml");
  expect({ status, kept: /0 no longer ready, 0 ready now, [1-9]\d* with the same verdict/u.test(out) }).toEqual({
    status: 0,
    kept: true,
  });
});
