import { formula } from "../../formula/formula.js";
import { loadMiddle } from "./balance.js";
import { type Beam, SAME_PLACE } from "./beam.js";
import { type HungBeam, hangBeam } from "./slack.js";

/** What becomes of a bar that loses one hang. */
export type LostHang =
  | { readonly tips: true; readonly lost: number }
  /** It stays up: the bar level on the hangs that are left. */
  | { readonly tips: false; readonly lost: number; readonly after: HungBeam & { readonly stable: true } };

/**
 * Without a hang the bar stays up only if the middle of its load lies strictly between the outer hangs that are left;
 * right under one of them it is balanced on it, which is no hold. Losing an inner hang never tips a bar.
 */
export function lostHang(beam: Beam, lost: number): LostHang {
  const left = beam.supports.filter((_, index) => index !== lost);
  const middle = loadMiddle(beam);
  if (left.length < 2 || middle <= left[0]! + SAME_PLACE || middle >= left.at(-1)! - SAME_PLACE)
    return { tips: true, lost };
  const after = hangBeam(beam, [lost]);
  return after.stable ? { tips: false, lost, after } : { tips: true, lost };
}

export const suddenPeak = formula({
  id: "rigging.sudden-peak",
  title: "Peak on a hang when another is lost",
  symbol: "P",
  kind: "mass",
  inputs: {
    R1: { kind: "mass", is: "what it carries before, level", least: 0 },
    R2: { kind: "mass", is: "what it carries after, level", least: 0 },
  },
  expression: "max(R1, 2 × R2 − R1)",
  source: "sudden-load",
  validity: "elastic and not damped; swings in one way at a time",
  example: {
    given: { R1: 11 / 30, R2: 11 / 16 },
    gives: 121 / 120,
    within: 1e-9,
    from: "four hangs alike, uniform load 1, the second lost: the third swings from 11/30 past 11/16 (by hand)",
  },
  compute: ({ R1, R2 }) => Math.max(R1, 2 * R2 - R1),
});
