import { printQuantity, type System } from "@plumbmark/calc";
import type { Element } from "hast";
import { lettering, SMALL } from "./lettering.js";
import { group, line, type PaperPoint, rect, WIDE } from "./svg.js";

/** How many times smaller than the thing its drawing is. */
export interface Scale {
  readonly ratio: number;
  readonly system: System;
  /** Metres of the thing → millimetres of paper. */
  readonly mm: (metres: number) => number;
}

// ISO 5455 for metric drawings; for customary units the scales of architects: 3 in, 1-1/2 in, 1 in … to the foot.
const METRIC = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000];
const INCHES: readonly (readonly [number, string])[] = [
  [1, "12 in"],
  [2, "6 in"],
  [4, "3 in"],
  [8, "1-1/2 in"],
  [12, "1 in"],
  [16, "3/4 in"],
  [24, "1/2 in"],
  [32, "3/8 in"],
  [48, "1/4 in"],
  [64, "3/16 in"],
  [96, "1/8 in"],
  [128, "3/32 in"],
  [192, "1/16 in"],
  [384, "1/32 in"],
  [768, "1/64 in"],
  [1536, "1/128 in"],
  [3072, "1/256 in"],
  [12_288, "1/1024 in"],
];

/** The largest usual scale at which `metres` fit in `available` millimetres. */
export function scaleFor(metres: number, available: number, system: System): Scale {
  const usual = system === "us" ? INCHES.map(([ratio]) => ratio) : METRIC;
  const ratio = usual.find((each) => (metres * 1000) / each <= available) ?? Math.ceil((metres * 1000) / available);
  return { ratio, system, mm: (length) => (length * 1000) / ratio };
}

export function scaleText({ ratio, system }: Scale): string {
  const inches = system === "us" ? INCHES.find(([each]) => each === ratio)?.[1] : undefined;
  return `Scale 1:${ratio}${inches ? ` (${inches} to 1 ft)` : ""} at full size`;
}

const FOOT = 0.3048;

/** A bar of a round length: it stays true when the drawing is shown larger or smaller. */
export function scaleBar(scale: Scale, [x, y]: PaperPoint): Element {
  const unit = scale.system === "us" ? FOOT : 1;
  const rounds = [0.01, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500].map((each) => each * unit);
  const length = rounds.filter((each) => scale.mm(each) <= 40).at(-1) ?? (rounds[0] as number);
  const drawn = scale.mm(length);
  const words = printQuantity(length, "length", scale.system);
  return group({ className: "scale-bar", dataLength: length, dataScale: scale.ratio }, [
    rect({ x, y: y - 1.5, width: drawn, height: 1.5 }),
    rect({ x, y: y - 1.5, width: drawn / 2, height: 1.5 }, { fill: "currentColor" }),
    line([x, y - 2.5], [x, y], { strokeWidth: WIDE }),
    line([x + drawn, y - 2.5], [x + drawn, y], { strokeWidth: WIDE }),
    lettering(words, [x + drawn + 1.5, y], { size: SMALL }),
  ]);
}
