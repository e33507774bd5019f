import { openRepository, type RepositoryFiles, schedule } from "@plumbmark/core";
import { expect, test } from "vitest";
import { ferry, PARTS } from "./hall.js";

const FOOT = 0.3048;
const stocked = PARTS.replace("cord: {kind: power-cable,", "cord: {kind: power-cable, lengths: [25 ft, 50 ft, 75 ft],");

const buildOf = (build: [string, string][] = [], given: Partial<RepositoryFiles> = {}) => {
  const files = ferry({ build }, { parts: [{ path: "parts/parts.yaml", text: stocked }], ...given });
  return openRepository(files, [], { today: "2026-12-01" }).model("builds/quay-banner.md").build;
};

/** The feed without a length. */
const LEFT_OUT: [string, string] = ["{part: cord, length: 50 ft}", "{part: cord}"];

const feet = (build: ReturnType<typeof buildOf>): number => {
  const length = build.runs[0]?.feed.length;
  return length?.known ? length.value / FOOT : Number.NaN;
};

/**
 * From the rack 18 ft up the wall; over to the end of the beam 6 ft to the side and 2 in down; the bar begins 7 ft from
 * there, for F1 at 8 ft is 1 ft from its left end; 5 ft 10 in down to 12 ft; and along the bar 1 ft to the face and half
 * a tile of 500 mm.
 */
const WAY = (18 + Math.hypot(6, 2 / 12) + 7 + 5 + 10 / 12 + 1) * FOOT + 0.25;

test("the way of a feed is what somebody would walk with a tape", () => {
  const [run] = buildOf().runs;
  expect(run?.feedWay).toMatchObject({ how: "led", from: "rack-a" });
  expect(run?.feedWay?.length.known && run.feedWay.length.value).toBeCloseTo(WAY, 9);
});

test("a feed without a length is the shortest that reaches, counted, and lost volts over", () => {
  const build = buildOf([LEFT_OUT]);
  // 38.65 ft × 1.05 + 1 m = 43.9 ft.
  expect(feet(build)).toBeCloseTo(50, 9);
  expect(JSON.stringify(schedule(build, "cables", "us"))).toContain('"number":50,');
  const lost = buildOf().runs[0]?.voltageDrop;
  expect(lost?.known).toBe(true);
  expect(build.runs[0]?.voltageDrop).toMatchObject({ value: lost?.known && lost.value });
});

test("a longer way takes a longer one", () => {
  // Three tiles of 500 mm farther along the bar and 4 ft lower: 47.57 ft, × 1.05 + 1 m = 53.2 ft.
  const far = buildOf([LEFT_OUT, ["height: 12 ft", "height: 8 ft"], ["banner A1..A4}", "banner A4..A1}"]]);
  expect(feet(far)).toBeCloseTo(75, 9);
});

test("what is owned counts before what the part comes in", () => {
  const stock = { path: "stock.yaml", text: "lots: {}\nitems: {cord: {lengths: {45 ft: 2, 44 ft: 0, 60 ft: 1}}}\n" };
  expect(feet(buildOf([LEFT_OUT], { stock }))).toBeCloseTo(45, 9);
});

test("a way that nobody looked at gives no length", () => {
  const files = ferry({ build: [LEFT_OUT], hall: [[", led: {by: R. Tallow, on: 2026-10-02}", ""]] });
  const repository = openRepository(files, [], { today: "2026-12-01" });
  const [run] = repository.model("builds/quay-banner.md").build.runs;
  expect(run?.feedWay?.how).toBe("straight");
  expect(run?.feed.length.known).toBe(false);
});
