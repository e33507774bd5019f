import { readQuantity } from "@plumbmark/calc";
import { describe, expect, it } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { number, read, words } from "./read.js";
import { drawn } from "./subjects.js";

/** The ratio a drawing says it has; none where it says it is not to scale. */
const ratio = (text: string): number | undefined => {
  const said = /Scale 1:(\d+)/u.exec(text)?.[1];
  return said === undefined ? undefined : Number(said);
};
/** Places under a beam are written as words: to-size/hang-plan compares them. */
const scaled = drawn.filter(({ text, name }) => ratio(text) !== undefined && !name.includes(" hang-plan-"));

describe("drawings to scale", () => {
  it("are those of faces, bars, bases and sections", () => {
    expect(scaled.length).toBeGreaterThan(40);
  });

  it.each(scaled)("$name: every dimension is as long as its figure says", ({ text }) => {
    const drawing = read(text);
    const all = drawing
      .having("data-metres")
      .filter(([, { attributes }]) => !String(attributes.class).includes("broken"));
    for (const [metres, group] of notEmpty(all)) {
      const drawnLength = number(group, "data-drawn");
      // Hundredths of a millimetre are written down.
      expect(Math.abs((drawnLength * (ratio(text) as number)) / 1000 - Number(metres))).toBeLessThan(
        (0.011 * (ratio(text) as number)) / 1000,
      );
      const printed = words(
        group.children.findLast((each) => each.type === "element" && each.name === "text") as never,
      );
      const read = readQuantity(printed.replace(/^bar /u, ""), ["length"]);
      // A figure is printed with four digits, or stands as its author wrote it.
      expect(read.ok && Math.abs(read.quantity.value / Number(metres) - 1), printed).toBeLessThan(0.0006);
    }
  });

  it.each(scaled)("$name: the dimension line itself is that long", ({ text }) => {
    const lines = read(text)
      .all("line")
      .filter(({ attributes }) => attributes.class === "dimension-line");
    for (const line of notEmpty(lines)) {
      const length = Math.hypot(number(line, "x2") - number(line, "x1"), number(line, "y2") - number(line, "y1"));
      expect(length).toBeGreaterThan(1);
    }
  });

  it.each(scaled)("$name: the scale bar is as long as it says", ({ text }) => {
    const [bar] = read(text).having("data-scale");
    const group = bar?.[1] as never;
    const whole = (group as { children: never[] }).children[0] as never;
    expect((number(whole, "width") * number(group, "data-scale")) / 1000 / number(group, "data-length")).toBeCloseTo(
      1,
      2,
    );
  });

  it("use the scales of ISO 5455 for metric documents, and whole fractions of an inch to the foot for others", () => {
    for (const { text } of notEmpty(scaled)) {
      const said = ratio(text) as number;
      const inches = 12 / said;
      const metric = /^[125]0*$/u.test(String(said));
      if (/ to 1 ft\)/u.test(text)) expect(Number.isInteger(inches * 1024)).toBe(true);
      else expect(metric, String(said)).toBe(true);
    }
  });

  it("figures that are not to scale are underlined (ISO 129-1)", () => {
    const broken = drawn.flatMap(({ text }) =>
      read(text)
        .all("g")
        .filter(({ attributes }) => attributes.class === "dimension broken"),
    );
    expect(broken.length).toBeGreaterThan(0);
    for (const group of broken)
      expect(
        group.children.some((each) => each.type === "element" && each.attributes["text-decoration"] === "underline"),
      ).toBe(true);
  });
});
