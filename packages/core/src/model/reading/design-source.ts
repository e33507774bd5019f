import type { BuildContext } from "./build-context.js";
import type { Reader } from "./reader.js";

/** What everything in a build is read from. */
export interface DesignSource {
  /** What messages call it. */
  readonly label: string;
  /** The front matter as it is written, by path. */
  readonly reader: Reader;
  /** What is known of the repository it belongs to. */
  readonly context: BuildContext;
  /** The electrical practice it follows: its own, or that of the house standard. */
  readonly practice: "us" | "iec";
}
