import { type Beam, samePlace } from "./beam.js";

/** What the loads of one span amount to, seen from its two ends. */
export interface SpanTerms {
  readonly length: number;
  /** 6 A a ÷ L of the free moment diagram about its left end: belongs to the support at its right. */
  readonly aboutLeft: number;
  /** 6 A b ÷ L about its right end: belongs to the support at its left. */
  readonly aboutRight: number;
  /** Reactions of the span as if it were simply supported. */
  readonly freeLeft: number;
  readonly freeRight: number;
}

/** Handbook load terms; distances from the end the moment is taken about. */
const uniformTerm = (w: number, d: number, e: number, l: number): number =>
  (w / (4 * l)) * (e ** 2 - d ** 2) * (2 * l ** 2 - e ** 2 - d ** 2);
const pointTerm = (p: number, a: number, l: number): number => (p * a * (l ** 2 - a ** 2)) / l;

/** Loads standing on a support belong to the support, not to the span beside it. */
const inside = (at: number, left: number, right: number): boolean =>
  at > left && at < right && !samePlace(at, left) && !samePlace(at, right);

export function spanTerms(beam: Beam, left: number, right: number): SpanTerms {
  const length = right - left;
  let [aboutLeft, aboutRight, freeRight, total] = [0, 0, 0, 0];
  for (const each of beam.uniform ?? []) {
    const [d, e] = [Math.max(each.from, left) - left, Math.min(each.to, right) - left];
    if (e <= d) continue;
    aboutLeft += uniformTerm(each.perMetre, d, e, length);
    aboutRight += uniformTerm(each.perMetre, length - e, length - d, length);
    total += each.perMetre * (e - d);
    freeRight += (each.perMetre * (e ** 2 - d ** 2)) / (2 * length);
  }
  for (const { at, load } of beam.points ?? []) {
    if (!inside(at, left, right)) continue;
    const a = at - left;
    aboutLeft += pointTerm(load, a, length);
    aboutRight += pointTerm(load, length - a, length);
    total += load;
    freeRight += (load * a) / length;
  }
  for (const { at, moment } of beam.couples ?? []) {
    if (!inside(at, left, right)) continue;
    const [a, b] = [at - left, right - at];
    aboutLeft += (moment * (length ** 2 - 3 * a ** 2)) / length;
    aboutRight += (moment * (3 * b ** 2 - length ** 2)) / length;
    freeRight += moment / length;
  }
  return { length, aboutLeft, aboutRight, freeRight, freeLeft: total - freeRight };
}
