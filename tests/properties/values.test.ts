import {
  formulas,
  given,
  greatestOf,
  type Known,
  leastOf,
  peakUse,
  printer,
  shareOf,
  sum,
  type Value,
} from "@plumbmark/calc";
import { expect, test } from "vitest";

// Arithmetic on values: everything here is counted by hand.

const watts = (...all: readonly number[]): readonly Known[] => all.map((each) => given(each, "power"));
const number = (value: Value): number | undefined => (value.known ? value.value : undefined);
const shown = (value: Value): string | undefined =>
  value.known && value.origin.from === "step" ? value.origin.step.show(printer("metric")) : undefined;

test("the least and the greatest of one, of several and of none", () => {
  expect([leastOf(watts(3), "power"), leastOf(watts(3, 1, 2), "power")].map(number)).toEqual([3, 1]);
  expect([greatestOf(watts(3), "power"), greatestOf(watts(1, 3, 2), "power")].map(number)).toEqual([3, 3]);
  expect([leastOf([], "power"), greatestOf([], "power")].map(number)).toEqual([undefined, undefined]);
});
test("one unknown makes the least unknown: it could be the one", () => {
  const unknown = leastOf([], "power");
  expect([leastOf([...watts(3), unknown], "power"), greatestOf([unknown, ...watts(3)], "power")].map(number)).toEqual([
    undefined,
    undefined,
  ]);
});
test("a sum of none is zero and shown as such, alike parts are counted", () => {
  expect([number(sum([], "power")), shown(sum([], "power"))]).toEqual([0, "0"]);
  expect(shown(sum(watts(130, 45, 130), "power"))).toBe("2 × 130 W + 45 W");
});
test("a share of something, of the unknown, and of nothing", () => {
  const [three, four, none, one] = watts(3, 4, 0, 1) as [Known, Known, Known, Known];
  expect([shareOf(three, four), shareOf(three, one), shareOf(none, four)].map(number)).toEqual([0.75, 3, 0]);
  expect([shareOf(three, none), shareOf(leastOf([], "power"), four)].map(number)).toEqual([undefined, undefined]);
});
test("the register lists formulas by name", () => {
  const names = formulas().map(({ id }) => id);
  expect(names).toEqual([...names].sort());
});
test("bookings of nothing take nothing; a day that no calendar has is told", () => {
  const booking = { lot: "a", build: "b", count: 0, from: "2027-03-05", to: "2027-03-06" };
  expect(peakUse([booking])[0]?.count).toBe(0);
  expect(() => peakUse([{ ...booking, from: "2027-13-01" }])).toThrow("2027-13-01 is not a date");
});
