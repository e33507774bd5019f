import type { DocumentFile, InspectOptions, Judged, RepositoryFiles } from "@plumbmark/core";

/** What a thread is told first: everything but the documents it is going to be sent, whose outlines are among the others. */
export interface Frame {
  readonly files: RepositoryFiles;
  readonly options: InspectOptions;
}

/** Documents a thread is to inspect with the built-in rules. */
export type Share = readonly DocumentFile[];

/** What they came to, in their order. */
export type Answer = readonly Judged[];
