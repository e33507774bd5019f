import { printNumber } from "@plumbmark/calc";
import type { CheckEntry } from "@plumbmark/core";
import { s } from "hastscript";
import type { Content } from "./page.js";

/** The limit stands at three quarters of the bar, so that what is over it can be seen. */
const LIMIT = 75;
const WIDTH = 100;

/** What is left to the limit in words: `12 % in hand`, `8 % over`. */
export function marginText(share: number): string {
  const left = (1 - share) * 100;
  return left >= 0 ? `${printNumber(left, 2)} % in hand` : `${printNumber(-left, 2)} % over`;
}

/** How near a check is to its limit; nothing for a check that has no share. */
export function marginBar({ share, outcome }: Pick<CheckEntry, "share" | "outcome">): Content {
  if (share === undefined || !Number.isFinite(share)) return undefined;
  const width = Math.round(Math.min(WIDTH, Math.max(0, share) * LIMIT) * 10) / 10;
  return s(
    "svg",
    { className: ["margin", outcome], viewBox: `0 0 ${WIDTH} 12`, role: "img", ariaLabel: marginText(share) },
    [
      s("rect", { className: ["track"], x: 0.5, y: 2.5, width: WIDTH - 1, height: 7 }),
      s("rect", { className: ["bar"], x: 0.5, y: 2.5, width, height: 7 }),
      s("path", { className: ["limit"], d: `M${LIMIT} 0V12` }),
    ],
  );
}
