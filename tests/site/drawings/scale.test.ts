import { readQuantity } from "@plumbmark/calc";
import { describe, expect, it } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { number, words } from "./read.js";
import { drawn } from "./subjects.js";

/** The ratio a drawing says it has; none where it says it is not to scale. */
const ratioOf = (said: string): number | undefined => {
  const ratio = /Scale 1:(\d+)/u.exec(said)?.[1];
  return ratio === undefined ? undefined : Number(ratio);
};
/** Places under a beam are written as words: to-size/hang-plan compares them. */
const scaled = drawn
  .filter(({ name }) => !name.includes(" hang-plan-"))
  .flatMap(({ name, read }) => {
    const said = read.all("text").map(words).join(" ");
    const ratio = ratioOf(said);
    return ratio === undefined ? [] : [{ name, read, said, ratio }];
  });

describe("drawings to scale", () => {
  it("are those of faces, bars, bases and sections", () => {
    expect(scaled.length).toBeGreaterThan(40);
  });

  it.each(scaled)("$name: every dimension is as long as its figure says", ({ read: drawing, ratio }) => {
    const all = drawing
      .having("data-metres")
      .filter(([, { attributes }]) => !String(attributes.class).includes("broken"));
    for (const [metres, group] of notEmpty(all)) {
      const drawnLength = number(group, "data-drawn");
      // Hundredths of a millimetre are written down.
      expect(Math.abs((drawnLength * ratio) / 1000 - Number(metres))).toBeLessThan((0.011 * ratio) / 1000);
      const printed = words(
        group.children.findLast((each) => each.type === "element" && each.name === "text") as never,
      );
      const figure = readQuantity(printed.replace(/^bar /u, ""), ["length"]);
      // A figure is printed with four digits, or stands as its author wrote it.
      expect(figure.ok && Math.abs(figure.quantity.value / Number(metres) - 1), printed).toBeLessThan(0.0006);
    }
  });

  it.each(scaled)("$name: the dimension line itself is that long", ({ read }) => {
    const lines = read.all("line").filter(({ attributes }) => attributes.class === "dimension-line");
    for (const line of notEmpty(lines)) {
      const length = Math.hypot(number(line, "x2") - number(line, "x1"), number(line, "y2") - number(line, "y1"));
      expect(length).toBeGreaterThan(1);
    }
  });

  it.each(scaled)("$name: the scale bar is as long as it says", ({ read }) => {
    const [bar] = read.having("data-scale");
    const group = bar?.[1] as never;
    const whole = (group as { children: never[] }).children[0] as never;
    expect((number(whole, "width") * number(group, "data-scale")) / 1000 / number(group, "data-length")).toBeCloseTo(
      1,
      2,
    );
  });

  it("use the scales of ISO 5455 for metric documents, and whole fractions of an inch to the foot for others", () => {
    for (const { said, ratio } of notEmpty(scaled)) {
      const inches = 12 / ratio;
      const metric = /^[125]0*$/u.test(String(ratio));
      if (/ to 1 ft\)/u.test(said)) expect(Number.isInteger(inches * 1024)).toBe(true);
      else expect(metric, String(ratio)).toBe(true);
    }
  });

  it("figures that are not to scale are underlined (ISO 129-1)", () => {
    const broken = drawn.flatMap(({ read }) =>
      read.all("g").filter(({ attributes }) => attributes.class === "dimension broken"),
    );
    expect(broken.length).toBeGreaterThan(0);
    for (const group of broken)
      expect(
        group.children.some((each) => each.type === "element" && each.attributes["text-decoration"] === "underline"),
      ).toBe(true);
  });
});
