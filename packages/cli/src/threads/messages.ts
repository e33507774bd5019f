import type { DocumentFile, InspectOptions, Judged, Outline, RepositoryFiles, RuleResult } from "@plumbmark/core";
import type { Brought } from "./brought.js";
import type { MadeOf, Sheets } from "./sheets.js";

/** What a thread that inspects is told first: everything but the documents, whose outlines are among the others. */
export interface Frame {
  readonly files: RepositoryFiles;
  readonly options: InspectOptions;
  readonly brought: Brought;
}

/** What a thread that makes sheets is told first: everything but the documents it is going to be sent. */
export interface SheetsFrame extends Omit<Sheets, "rules"> {
  readonly brought: Brought;
}

/** A document, and what the rules of plugins came to on it. */
export interface Sent extends DocumentFile {
  readonly outcomes: readonly RuleResult[];
}

/** What is to be done with every share that follows, until the next order; plain data. */
export type Order =
  | { readonly work: "outlines" }
  | { readonly work: "documents"; readonly frame: Frame }
  | { readonly work: "sheets"; readonly frame: SheetsFrame };

/** Documents of one share, in their order. */
export type Share = readonly Sent[];

/** What a share comes to, in the order of its documents. */
export interface Answers {
  readonly outlines: readonly Outline[];
  readonly documents: readonly Judged[];
  readonly sheets: readonly MadeOf[];
}

/** What a thread is sent: an order, which is not answered, or a share, which is. */
export type Message = Order | Share;
