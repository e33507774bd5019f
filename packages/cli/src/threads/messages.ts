import type { InspectOptions, Judged, RepositoryFiles } from "@plumbmark/core";

/** What a thread is asked: to inspect its share of the documents with the built-in rules. */
export interface Share {
  readonly files: RepositoryFiles;
  readonly options: InspectOptions;
}

/** What it came to, or the mistake of ours that ended it. */
export type Answer =
  | { readonly judged: readonly Judged[] }
  | { readonly failed: string; readonly name: string; readonly stack: string };
