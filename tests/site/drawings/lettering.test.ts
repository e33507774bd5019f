import { describe, expect, it } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { number, words } from "./read.js";
import { drawn } from "./subjects.js";

const of = (kind: string) => drawn.filter(({ drawing }) => drawing.name.startsWith(kind));

// SI Brochure, 9th edition, 5.4.3: the space between a number and its unit keeps them together.
describe("lettering", () => {
  it.each(notEmpty(drawn))("$name: no line begins with the unit of a number on the line before", ({ read }) => {
    const torn = read.all("text").filter((each, index, all) => {
      const before = all[index - 1];
      // A line below another one of the same words; a row's letter beside a column's number is none.
      if (!before || number(before, "x") !== number(each, "x") || number(each, "y") - number(before, "y") > 6)
        return false;
      return (
        /\d$/u.test(words(before)) && /^(?:mm?|ft|in|kg|lb|A|V|W|VA|px|Hz|bit|%)(?![\p{L}\p{Nd}])/u.test(words(each))
      );
    });
    expect(torn.map(words)).toEqual([]);
  });

  it.each(of("stand"))("$name: the side of the audience is named beside the base", ({ read: { all, having } }) => {
    const [base] = having("class").flatMap(([name, each]) => (name === "base" ? [each] : []));
    const at = (label: string): number =>
      number(
        all("text").find((each) => words(each) === label),
        "x",
      );
    if (!base) return;
    expect(at("◂ audience")).toBeLessThan(number(base, "x"));
    expect(at("behind ▸")).toBeGreaterThan(number(base, "x") + number(base, "width"));
  });

  it("what a hang carries stands clear of the line at the end of the bar", () => {
    const struck = of("hang-plot").flatMap(({ name, read: { all, having } }) => {
      // The sheet itself is paper, too, and lies behind everything.
      const papers = all("rect").filter((each) => each.attributes.class === "paper" && number(each, "width") < 40);
      return having("data-reaction").flatMap(([, label]) => {
        const [x, y] = [number(label, "x"), number(label, "y")];
        // Half an em is less than any figure is wide.
        const reach = x + words(label).length * 2.83 * 0.5;
        const crossing = all("line").filter(
          (each) =>
            each.attributes.x1 === each.attributes.x2 &&
            number(each, "x1") > x &&
            number(each, "x1") < reach &&
            Math.min(number(each, "y1"), number(each, "y2")) < y &&
            Math.max(number(each, "y1"), number(each, "y2")) > y,
        );
        const behind = (line: number): boolean =>
          papers.some(
            (each) =>
              number(each, "x") < line &&
              number(each, "x") + number(each, "width") > line &&
              number(each, "y") < y &&
              number(each, "y") + number(each, "height") >= y,
          );
        return label.attributes["text-anchor"] === "end"
          ? []
          : crossing.filter((each) => !behind(number(each, "x1"))).map(() => `${name}: ${words(label)}`);
      });
    });
    expect(of("hang-plot").length).toBeGreaterThan(3);
    expect(struck).toEqual([]);
  });
});
