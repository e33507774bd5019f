import { expect, it } from "vitest";
import { number, words } from "../read.js";
import { boxOf, FINE, having, inside, lineOf, only, sheet } from "./paper.js";

// A bar under a surveyed beam, seen from above. By tests/venues/hall.ts the front beam is 24 ft long, with points 8, 12 and
// 16 ft from its end at the audience's left; by ../repository.ts the bar is 10 ft long and hangs by its first foot under the
// first of them, so that it begins 7 ft from that end.

const drawing = sheet("builds/under.md", "hang-plan-low");
const foot = 0.3048 * drawing.perMetre;
const beam = boxOf(having(drawing, "data-structure", "front-beam"));
const bar = lineOf(having(drawing, "data-bar", "low"));
const at = (feet: number): number => beam.x + feet * foot;
const near = (one: number, other: number): boolean => Math.abs(one - other) <= 2 * FINE;

it("has the beam as long as it is surveyed, and the bar in its middle from 7 to 17 ft", () => {
  expect(near(beam.width, 24 * foot)).toBe(true);
  expect([near(bar.from[0], at(7)), near(bar.to[0], at(17))]).toEqual([true, true]);
  expect([bar.from[1], bar.to[1]].map((y) => near(y, beam.y + beam.height / 2))).toEqual([true, true]);
});

it.each([
  ["H1", "F1", 8],
  ["H2", "F2", 12],
  ["H3", "F3", 16],
])("has %s at %s, %i ft from the end of the beam, with a line down to its name", (hang, point, feet) => {
  const mark = boxOf(having(drawing, "data-hang", hang));
  expect(near(mark.x + mark.width / 2, at(feet))).toBe(true);
  expect(near(mark.y + mark.height / 2, beam.y + beam.height / 2)).toBe(true);
  const label = only(drawing.all("text").filter((each) => words(each).startsWith(`${hang} at ${point}: ${feet} ft`)));
  expect(near(number(label, "x"), at(feet))).toBe(true);
  const [leader, ...others] = drawing
    .all("line")
    .map(lineOf)
    .filter(({ from, to }) => near(from[0], at(feet)) && near(to[0], at(feet)) && from[1] !== to[1]);
  expect(others).toEqual([]);
  expect(near(leader?.from[1] as number, beam.y + beam.height)).toBe(true);
  const room = number(label, "y") - (leader?.to[1] as number);
  // Down to the head of its capitals.
  expect(room > 0.718 * 2.83 && room < 5).toBe(true);
  // What lies beyond the middle is named towards it, so that it stays on the sheet.
  expect(label.attributes["text-anchor"] ?? "start").toBe(feet > 12 ? "end" : "start");
});

it("names the beam over it and the bar with its ends below it, above the names of the hangs", () => {
  const labels = drawing.all("text");
  const over = only(labels.filter((each) => words(each) === "front-beam"));
  expect(number(over, "y") < beam.y && number(over, "y") > beam.y - 4).toBe(true);
  const under = only(labels.filter((each) => words(each) === "bar low, from 7 ft to 17 ft"));
  expect([over, under].map((each) => near(number(each, "x"), beam.x))).toEqual([true, true]);
  const hangs = labels.filter((each) => /^H\d/u.test(words(each))).map((each) => number(each, "y"));
  expect(number(under, "y")).toBeGreaterThan(beam.y + beam.height + 2);
  expect(hangs.every((y) => y > number(under, "y") + 3)).toBe(true);
  const steps = hangs.slice(1).map((y, index) => y - (hangs[index] as number));
  expect(steps.every((each) => each > 3.5 && each < 7)).toBe(true);
  expect(inside(drawing.root, "rect").length).toBeGreaterThan(5);
});
