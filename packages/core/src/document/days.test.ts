import fc from "fast-check";
import { expect, test } from "vitest";
import { isDay } from "./days.js";

const two = (number: number): string => String(number).padStart(2, "0");

test("a day is one that ECMAScript's calendar has, which is the Gregorian one carried on both ways (ECMA-262, 21.4.1)", () => {
  const number = fc.integer({ min: 0, max: 99 });
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 9999 }), number, number, (year, month, day) => {
      const text = `${String(year).padStart(4, "0")}-${two(month % 14)}-${two(day % 33)}`;
      const read = new Date(`${text}T00:00:00Z`);
      expect(isDay(text)).toBe(!Number.isNaN(read.getTime()) && read.toISOString().startsWith(text));
    }),
    { numRuns: 2000 },
  );
});

test.each([
  ["2028-02-29", true],
  ["2027-02-29", false],
  ["2000-02-29", true],
  ["1900-02-29", false],
  ["2027-04-31", false],
  ["2027-12-31", true],
  ["2027-00-10", false],
  ["2027-13-01", false],
  ["2027-01-00", false],
  ["2027-1-1", false],
  ["+002027-01-01", false],
  ["2027-01-01 ", false],
  ["2027-01-01T00", false],
  ["", false],
])("%j is a day: %j (ISO 8601, leap years of the Gregorian calendar)", (text, is) => {
  expect(isDay(text)).toBe(is);
});
