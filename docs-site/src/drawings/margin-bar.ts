import type { CheckEntry } from "@plumbmark/core";
import type { Element } from "hast";
import { type Attributes, type Content, s } from "../html/html.js";
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
export function marginBarText({ share, outcome, allowed }: CheckEntry): string {
  if (share === undefined) return "open: cannot be told";
  const sense = allowed?.sense === "at least" ? "asked for is" : "measured is";
  const of = allowed?.sense === "at least" ? "of what is there" : "of what is allowed";
  return `${outcome}: ${sense} ${percent(share)} ${of}`;
}

const idOf = (outcome: CheckEntry["outcome"]): string => `Margin-${outcome}`;

const stroke = { fill: "none", stroke: "currentColor" };

const broken = s("path", { d: "M140 1.5l3 4-3 4 3 4M144 1.5l3 4-3 4 3 4", ...stroke });

function bar({ share = 0, outcome }: CheckEntry): Content {
  const width = Math.max(Math.min(share, MOST) * WHOLE, 1);
  const look = { fill: `url(#${idOf(outcome)})`, stroke: COLOUR[outcome], strokeWidth: 1.5 };
  return [s("rect", { ...TRACK, width, ...look }), share > MOST ? broken : undefined];
}

const TRACK = { x: 0.5, y: 2.5, height: HEIGHT };

const MARGIN_BAR = ["margin-bar"];

export const isMarginBar = ({ properties }: Element): boolean => properties.className === MARGIN_BAR;

/** What a bar is measured against: the track, and the line of what is allowed. */
const scale = (id: string, more: Attributes): Element =>
  s("g", { id, ...stroke }, [
    s("rect", { ...TRACK, width: WHOLE, strokeWidth: 0.6, ...more }),
    s("path", { d: `M${WHOLE + 0.5} 0v15`, strokeWidth: 2 }),
  ]);

/** One tile of the hatch of an outcome; tiles lie side by side from the corner of the drawing. */
const pattern = (outcome: CheckEntry["outcome"]): Element => {
  const kind = HATCH[outcome];
  const side = kind === "crossed" ? 7 : 5;
  const d = hatch({ x: -side, y: -side, width: 3 * side, height: 3 * side }, kind, 5);
  return s("pattern", { id: idOf(outcome), width: side, height: side, patternUnits: "userSpaceOnUse" }, [
    s("path", { d, fill: "none", stroke: COLOUR[outcome] }),
  ]);
};

/** What the bars of a page have in common; it stands on the page once. */
export const marginMarks: Element = s(
  "svg",
  { className: ["marks"], width: 0, height: 0, role: "img", ariaHidden: "true" },
  [
    s("defs", {}, [
      scale("Margin-scale", {}),
      scale("Margin-untold", { strokeDasharray: "4 3" }),
      ...(["holds", "fails", "waived"] as const).map(pattern),
    ]),
  ],
);

/**
 * How near a check is to its limit: the bar is what was measured, the upright line what is allowed (where more is
 * better, the bar is what is asked for and the line what is there). An open check has an empty, dashed bar. Undefined
 * for a plain statement, which has no margin. A page that shows any has to hold the `marginMarks`.
 */
export function marginBar(check: CheckEntry): Element | undefined {
  const { share, outcome } = check;
  const measured = share !== undefined && Number.isFinite(share) && check.allowed?.sense !== "exactly";
  if (!measured && outcome !== "open") return undefined;
  const label = measured ? `${outcome}, used ${percent(share)}` : "open";
  return s("svg", { className: MARGIN_BAR, viewBox: "0 0 300 15", role: "img", ariaLabel: marginBarText(check) }, [
    measured ? bar(check) : undefined,
    s("use", { href: measured ? "#Margin-scale" : "#Margin-untold" }),
    s("text", { x: MOST * WHOLE + 8, y: 11.5, ariaHidden: "true" }, label),
  ]);
}
