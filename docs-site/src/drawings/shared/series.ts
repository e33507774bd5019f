import { HATCHES, type Hatch } from "./hatch.js";

/** How the things of one kind are told apart: by colour, by hatch and by line, each of which is enough alone. */
export interface Series {
  readonly colour: string;
  readonly className: string;
  readonly hatch: Hatch;
  /** Dashes of its line; none for a full line. */
  readonly dash: string | undefined;
}

// Okabe–Ito, the darker ones first: a line of yellow is hardly seen on paper.
const COLOURS = ["#0072B2", "#D55E00", "#009E73", "#CC79A7", "#E69F00", "#56B4E9"];
const DASHES = [undefined, "4 1.4", "1.3 1.3", "6 1.3 1.3 1.3"];

/** Colours, hatches and dashes come round after 6, 5 and 4, so that the same three meet again after sixty. */
export const series = (index: number): Series => ({
  colour: COLOURS[index % COLOURS.length] as string,
  className: `series-${index % COLOURS.length}`,
  hatch: HATCHES[index % HATCHES.length] as Hatch,
  dash: DASHES[index % DASHES.length],
});

export const lineLook = ({ colour, className, dash }: Series) => ({
  stroke: colour,
  className,
  strokeWidth: 0.7,
  ...(dash ? { strokeDasharray: dash } : {}),
});
