import type { Takeoff } from "../../takeoff/takeoff.js";
import type { Design } from "../design.js";

/** A design with what is counted from it. */
export interface SharedDesign extends Design {
  readonly takeoff: Pick<Takeoff, "pieces">;
}
