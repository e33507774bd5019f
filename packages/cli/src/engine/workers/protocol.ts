import type { DocumentFile, InspectOptions, Outline, RepositoryFiles, RuleResult, SharedUse } from "@plumbmark/core";
import type { SheetsInput, WrittenSheet } from "../sheet-writer.js";
import type { Judged } from "./inspect-many.js";
import type { TransferredResults } from "./plugin-results.js";

/** What a worker that inspects is told first: everything but the documents, whose outlines are among the others. */
export interface InspectionContext {
  readonly files: RepositoryFiles;
  readonly options: InspectOptions;
  readonly plugins: TransferredResults;
}

/** What a worker that makes sheets is told first: everything but the documents it is going to be sent. */
export interface SheetsContext extends Omit<SheetsInput, "rules"> {
  readonly plugins: TransferredResults;
}

/** A document, and the results of the rules of plugins on it. */
export interface SentDocument extends DocumentFile {
  readonly results: readonly RuleResult[];
}

/** What is to be done with every batch that follows, until the next task; plain data. */
export type WorkerTask =
  | { readonly work: "outlines" }
  | { readonly work: "uses"; readonly context: Pick<InspectionContext, "files" | "options"> }
  | { readonly work: "documents"; readonly context: InspectionContext }
  | { readonly work: "sheets"; readonly context: SheetsContext };

/** Documents, in their order. */
export type Batch = readonly SentDocument[];

/** The results of a batch, in the order of its documents. */
export interface BatchResults {
  readonly outlines: readonly Outline[];
  readonly uses: readonly (readonly SharedUse[])[];
  readonly documents: readonly Judged[];
  readonly sheets: readonly WrittenSheet[];
}

/** What a worker is sent: a task, which is not answered, or a batch, which is. */
export type Message = WorkerTask | Batch;
