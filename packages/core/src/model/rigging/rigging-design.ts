import type { CablingDesign } from "../cabling/cabling-design.js";
import type { Bar } from "./bar.js";

/** What hangs on what: faces and their cables on bars. */
export interface RiggingDesign extends CablingDesign {
  /** Its bars. */
  readonly bars: readonly Bar[];
}
