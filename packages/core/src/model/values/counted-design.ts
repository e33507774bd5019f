import type { Takeoff } from "../../takeoff/takeoff.js";
import type { Design } from "../design.js";

/** A design with the quantities counted from it: totals need both. */
export interface CountedDesign extends Design {
  /** Quantities counted from the design. */
  readonly takeoff: Takeoff;
}
