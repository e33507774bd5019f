import type { FacesDesign } from "../faces/faces-design.js";
import type { FeedWay } from "../venue/needed.js";
import type { Circuit } from "./circuit.js";
import type { Device } from "./device.js";
import type { Run } from "./run.js";

/** How the panels are powered: what circuits and runs are given, and what they give. */
export interface PowerDesign extends FacesDesign {
  /** The way of the feed of a run; undefined where the venue was not surveyed. */
  readonly wayOfRun: (run: Run) => FeedWay | undefined;
  /** Its circuits. */
  readonly circuits: readonly Circuit[];
  /** Processor, sources and converters, each with what it draws and the circuit it is on. */
  readonly devices: readonly Device[];
  /** Its runs: panels powered one after another from one feed. */
  readonly runs: readonly Run[];
}
