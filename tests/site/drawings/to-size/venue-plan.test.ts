import { readSurvey, type Survey } from "@plumbmark/core";
import { type Drawing, svgFile } from "@plumbmark/docs-site";
import { describe, expect, it } from "vitest";
import type { Element } from "xast";
import { venuePlan } from "../../../../docs-site/src/drawings/venue-plan.js";
import { HALL } from "../../../venues/hall.js";
import { boxOfLabel } from "../drafting/letters.js";
import { number, read, words } from "../read.js";
import { boxOf, FINE, lineOf, type Place } from "./paper.js";

// A venue from above, by the figures of its survey (tests/venues/hall.ts): feet to the right of the middle of the stage
// front, and feet upstage, which is up the page.

const survey = readSurvey({ path: "venues/ferry-hall.md", text: HALL }) as Survey;
const plan = venuePlan(survey, "us") as Drawing;
const drawing = read(svgFile(plan));
const [[ratio] = ["0"]] = drawing.having("data-scale");
/** Millimetres of paper for a foot. */
const foot = 304.8 / Number(ratio);

const [cross] = drawing.all("path").filter(({ attributes }) => /^M[\d.]+ [\d.]+h3M/u.test(attributes.d ?? ""));
const [x0 = 0, y0 = 0, , , up = 0] = [...(cross?.attributes.d ?? "").matchAll(/[\d.]+/gu)].map(Number);
/** The cross is where it is measured from: its level stroke begins half its length to the left. */
const origin: Place = [x0 + 1.5, y0];

const at = (right: number, upstage: number): Place => [origin[0] + right * foot, origin[1] - upstage * foot];
const off = ([x, y]: Place, [wx, wy]: Place): boolean => Math.hypot(x - wx, y - wy) > 2 * FINE;

describe("the plan of a venue", () => {
  it("has a cross where it is measured from", () => expect(up + 1.5).toBeCloseTo(y0, 2));

  it("has every place where it was measured", () => {
    const places = drawing
      .having("data-place")
      .map(([name, mark]) => [name, [number(mark, "data-x"), number(mark, "data-y")] as Place] as const);
    const written = { "rack-a": at(-18, 2), booth: at(0, -70), "left-wall-top": at(-18, 2) };
    expect(places.map(([name]) => name).toSorted()).toEqual(Object.keys(written).toSorted());
    expect(places.filter(([name, place]) => off(place, written[name as keyof typeof written]))).toEqual([]);
    // A disc of 1 mm about the place.
    const discs = drawing.having("data-place").filter(([, mark]) => {
      const [x, y, r] = [...(mark.attributes.d ?? "").matchAll(/-?[\d.]+/gu)].map(Number) as [number, number, number];
      return off([x + r, y], [number(mark, "data-x"), number(mark, "data-y")]);
    });
    expect(discs).toEqual([]);
  });

  it("has the beam and its points as far along it as is written", () => {
    const beam = lineOf(drawing.having("data-structure")[0]?.[1] as Element);
    expect([off(beam.from, at(-12, 2)), off(beam.to, at(12, 2))]).toEqual([false, false]);
    const points = drawing.having("data-point").map(([name, mark]) => {
      const { x, y, width, height } = boxOf(mark);
      return [name, [x + width / 2, y + height / 2] as Place] as const;
    });
    // 8, 12 and 16 ft from the end at the audience's left.
    const written = { "front-beam.F1": at(-4, 2), "front-beam.F2": at(0, 2), "front-beam.F3": at(4, 2) };
    expect(points.map(([name]) => name)).toEqual(Object.keys(written));
    expect(points.filter(([name, place]) => off(place, written[name as keyof typeof written]))).toEqual([]);
  });

  it("names every place beside its mark, with its height and its circuits, and no name is on another", () => {
    const labels = drawing.all("text").map((label) => ({ said: words(label), box: boxOfLabel(label) }));
    const rack = labels.find(({ said }) => said === "rack-a")?.box;
    expect(labels.map(({ said }) => said)).toEqual(
      expect.arrayContaining([
        "rack-a",
        "booth, 3 ft up",
        "left-wall-top, 18 ft up",
        "circuit stage-4",
        "circuit stage-5",
        "F1",
        "F2",
        "F3",
      ]),
    );
    const [x, y] = at(-18, 2);
    expect(rack && Math.abs(rack.x - x - 2) < FINE && Math.abs(rack.y + rack.height / 2 - y) < 2).toBe(true);
    const met = labels.flatMap((one, index) =>
      labels
        .slice(index + 1)
        .filter(
          ({ box }) =>
            box.x < one.box.x + one.box.width &&
            one.box.x < box.x + box.width &&
            box.y < one.box.y + one.box.height &&
            one.box.y < box.y + box.height,
        )
        .map(({ said }) => `${one.said} | ${said}`),
    );
    expect(met).toEqual([]);
  });

  it("stays on its sheet, and is as large as it can be at a usual scale", () => {
    const marks = [at(-18, 2), at(12, 2), at(0, -70), at(0, 0)];
    expect(marks.filter(([x, y]) => x < 10 || x > plan.width - 40 || y < 15 || y > plan.height - 15)).toEqual([]);
    // The next larger scale of architects, 1/8 in to the foot for 3/32 in, is 1:96 for 1:128: 72 ft would be 229 mm.
    expect([Number(ratio), (72 * 304.8) / 96 > 190]).toEqual([128, true]);
  });
});
