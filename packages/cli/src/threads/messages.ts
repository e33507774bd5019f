import type { DocumentFile, InspectOptions, Judged, RepositoryFiles, RuleOutcome } from "@plumbmark/core";
import type { Brought } from "./brought.js";

/** What a thread is told first: everything but the documents it is going to be sent, whose outlines are among the others. */
export interface Frame {
  readonly files: RepositoryFiles;
  readonly options: InspectOptions;
  readonly brought: Brought;
}

/** A document, and what the rules of plugins came to on it. */
export interface Sent extends DocumentFile {
  readonly outcomes: readonly RuleOutcome[];
}

/** Documents a thread is to inspect with the built-in rules. */
export type Share = readonly Sent[];

/** What they came to, in their order. */
export type Answer = readonly Judged[];
