import type { CheckEntry } from "@plumbmark/core";
import type { Element } from "hast";
import { s } from "hastscript";
import { type Hatch, hatch } from "./shared/hatch.js";

/** Length of what is allowed; beyond half as much again the bar is broken off. */
const WHOLE = 100;
const MOST = 1.5;
const HEIGHT = 10;

const HATCH: Readonly<Record<CheckEntry["outcome"], Hatch>> = {
  holds: "rising",
  fails: "crossed",
  waived: "upright",
  open: "level",
};

const COLOUR: Readonly<Record<CheckEntry["outcome"], string>> = {
  holds: "#009E73",
  fails: "#D55E00",
  waived: "#CC79A7",
  open: "#6b6b6b",
};

/** Rounding never puts a check on the other side of its limit. */
const percent = (share: number): string => {
  const whole = Number((share * 100).toPrecision(3));
  if (whole === 100 && Math.abs(share - 1) > 1e-9) return share > 1 ? "just over 100 %" : "just under 100 %";
  return `${whole} %`;
};

/** What the bar shows, in words. */
export function marginText({ share, outcome, allowed }: CheckEntry): string {
  if (share === undefined) return "open: cannot be told";
  const sense = allowed?.sense === "at least" ? "asked for is" : "measured is";
  const of = allowed?.sense === "at least" ? "of what is there" : "of what is allowed";
  return `${outcome}: ${sense} ${percent(share)} ${of}`;
}

function bar({ share = 0, outcome }: CheckEntry): Element[] {
  const width = Math.min(share, MOST) * WHOLE;
  const box = { x: 0.5, y: 2.5, width: Math.max(width, 1), height: HEIGHT };
  const look = { stroke: COLOUR[outcome], className: ["margin", outcome] };
  const broken =
    share > MOST
      ? [s("path", { d: "M140 1.5l3 4-3 4 3 4M144 1.5l3 4-3 4 3 4", fill: "none", stroke: "currentColor" })]
      : [];
  return [
    s("rect", { ...box, ...look, fill: "none", strokeWidth: 1.5 }),
    s("path", { d: hatch(box, HATCH[outcome], 5), ...look, fill: "none", strokeWidth: 1 }),
    ...broken,
  ];
}

/**
 * How near a check is to its limit: the bar is what was measured, the upright line what is allowed (where more is
 * better, the bar is what is asked for and the line what is there). An open check has an empty, dashed bar. Undefined
 * for a plain statement, which has no margin.
 */
export function marginBar(check: CheckEntry): Element | undefined {
  const { share, outcome } = check;
  const measured = share !== undefined && Number.isFinite(share) && check.allowed?.sense !== "exactly";
  if (!measured && outcome !== "open") return undefined;
  const track = { x: 0.5, y: 2.5, width: WHOLE, height: HEIGHT, fill: "none", stroke: "currentColor" };
  const label = measured ? `${outcome}, ${percent(share)}` : "open";
  return s(
    "svg",
    {
      viewBox: "0 0 300 15",
      width: 300,
      height: 15,
      className: ["margin-bar"],
      role: "img",
      ariaLabel: marginText(check),
    },
    s("rect", { ...track, strokeWidth: 0.6, ...(measured ? {} : { strokeDashArray: "4 3" }) }),
    ...(measured ? bar(check) : []),
    s("path", { d: `M${WHOLE + 0.5} 0v15`, stroke: "currentColor", strokeWidth: 2 }),
    s("text", { x: MOST * WHOLE + 8, y: 11.5, fontSize: 11, fill: "currentColor", ariaHidden: "true" }, label),
  );
}
