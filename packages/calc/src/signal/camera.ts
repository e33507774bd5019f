import { formula } from "../formula/formula.js";

/**
 * Refreshes of a panel that fall into one exposure of a camera. With a whole number of them every exposure sees the same
 * light wherever it begins; with a part of one left over, a band of the picture has had one refresh more than the rest,
 * and it is the broader the fewer there are in all.
 */
export const refreshesExposed = formula({
  id: "signal.refreshes-exposed",
  title: "Refreshes of a panel in one exposure of a camera",
  symbol: "n",
  kind: "count",
  inputs: {
    f: { kind: "frequency", is: "refresh rate of the panel", above: 0 },
    t: { kind: "time", is: "exposure of a frame", above: 0 },
  },
  expression: "floor(f × t)",
  source: "camera-practice",
  validity: "panels that refresh at an even rate, cameras with one shutter for the frame",
  example: { given: { f: 3840, t: 0.02 }, gives: 76, within: 0, from: "3840 Hz × 1/50 s = 76.8, by hand" },
  // A product that is whole but for rounding counts as whole.
  compute: ({ f, t }) => Math.floor(f * t * (1 + 1e-12)),
});

/** Exposure of a frame by the angle of the shutter. */
export const exposureOf = formula({
  id: "signal.exposure",
  title: "Exposure of a frame by the angle of the shutter",
  symbol: "t",
  kind: "time",
  inputs: {
    a: { kind: "angle", is: "angle of the shutter", above: 0, most: 360 },
    r: { kind: "frequency", is: "frame rate of the camera", above: 0 },
  },
  expression: "a ÷ (360° × r)",
  source: "camera-practice",
  validity: "shutters told by an angle of up to 360°",
  example: { given: { a: 180, r: 25 }, gives: 0.02, within: 1e-12, from: "180° at 25 Hz is 1/50 s, by hand" },
  compute: ({ a, r }) => a / (360 * r),
});

/**
 * Whether two rates beat: neither a whole multiple of the other, so that what one shows wanders through the frames of the
 * other. Hz both; a difference of less than a ten-thousandth counts as none: 59.94 Hz before
 * 60 Hz lets a band wander through the picture in 17 s.
 */
export function beats(one: number, other: number): boolean {
  const [fast, slow] = [Math.max(one, other), Math.min(one, other)];
  const times = fast / slow;
  return Math.abs(times - Math.round(times)) > 1e-4 * Math.round(times);
}
