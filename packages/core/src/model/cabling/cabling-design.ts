import type { DataDesign } from "../data/data-design.js";
import type { PowerDesign } from "../power/power-design.js";

/** What is cabled: runs and chains. */
export interface CablingDesign extends PowerDesign, DataDesign {}
