import {
  acuityDistance,
  faceWidth,
  given,
  type Known,
  pixelPitch,
  portBound,
  printer,
  type Value,
} from "@plumbmark/calc";
import { expect, test } from "vitest";

const shown = (value: Value): string => {
  const { origin } = value as Known;
  return origin.from === "step" ? origin.step.show(printer("us")) : "";
};

// 1e9 × 0.975292588 ÷ 1440 = 677 286.5 on a pocket calculator; with 97.53 % it would be 677 291.
test("the bound of a link is shown with enough digits to be redone", () => {
  const η = given(1500 / 1538, "ratio");
  const bound = portBound.of({
    r: given(1e9, "data-rate"),
    η,
    b: given(24, "colour-depth"),
    f: given(60, "frequency"),
  });
  expect(shown(bound)).toBe("floor(1 Gb/s × 0.975292588 ÷ (24 bit × 60 Hz))");
});

// 25.4 mm to the inch and 304.8 mm to the foot are exact (NIST HB 44 App. C).
test("panels and pitches are shown in millimetres even where the rest is in feet", () => {
  const w = given(0.5, "length");
  expect(shown(faceWidth.of({ c: given(6, "count"), w }))).toBe("6 × 500 mm ÷ 304.8 mm/ft");
  const pitch = pixelPitch.of({ w, n: given(168, "pixels") });
  expect(shown(pitch)).toBe("500 mm ÷ 168 px ÷ 25.4 mm/in");
  expect(shown(acuityDistance.of({ p: pitch }))).toBe("2.976 mm × 3437.75 ÷ 304.8 mm/ft");
});
