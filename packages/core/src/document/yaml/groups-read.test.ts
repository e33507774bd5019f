import { given } from "@plumbmark/calc";
import { expect, test } from "vitest";
import { keepRead, valuesRead } from "./groups-read.js";

const form = {};
const values = [["faces.banner.trim", given(3.3528, "length")]] as const;

test("what was read of a group is known again by the same form at the same path, and by no other", () => {
  const group = { trim: "11 ft" };
  keepRead(form, group, "faces.banner", () => values);
  expect(valuesRead(form, group, "faces.banner")).toBe(values);
  expect(valuesRead({}, group, "faces.banner")).toBeUndefined();
  expect(valuesRead(form, group, "faces.header")).toBeUndefined();
  expect(valuesRead(form, { ...group }, "faces.banner")).toBeUndefined();
});

test("what stands further down is read with the group it stands in", () => {
  const group = {};
  keepRead(form, group, "rigging.bars.header", () => []);
  expect(valuesRead(form, group, "rigging.bars.header")).toBeUndefined();
});
