import type { InspectOptions } from "./prepare.js";

/** How a repository is opened. */
export interface OpenOptions extends InspectOptions {
  /** Whether the prose of the documents is going to be shown, so that the whole body is read at once. */
  readonly prose?: boolean;
  /**
   * What is kept of a document that was looked at: its entry, which is plain data; its model, too, until it is released;
   * or nothing. Entries when nothing is said.
   */
  readonly keep?: "nothing" | "entries" | "models";
  /**
   * Whether the documents are being written, as in an editor: what each rule looked at is kept with what it found, so
   * that it is not asked again while that is the same, and at which figures findings turn is told later, by `turned`.
   */
  readonly written?: boolean;
  /** Whether it is told at which figure each finding turns: it takes as long as all the rest. True when left out. */
  readonly turns?: boolean;
  /** Whether models are frozen, so that a rule that changes what it looks at fails itself and no other. */
  readonly frozen?: boolean;
}
