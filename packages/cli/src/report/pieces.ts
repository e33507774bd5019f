import type { InspectionRecord } from "@plumbmark/core";
import { json } from "./form.js";

/** Enough that writing takes little time, and little enough that what thousands of documents came to is never held whole. */
const PRINTED = 500_000;

/** Pieces put together until they are worth printing. */
export function* together(pieces: Iterable<string>): Iterable<string> {
  let held = "";
  for (const piece of pieces) {
    held += piece;
    if (held.length < PRINTED) continue;
    yield held;
    held = "";
  }
  yield held;
}

const NO_DOCUMENTS = '\n  "documents": []';

/**
 * A record as `json` prints it, a piece for each document: that of a hundred thousand is longer than Node.js can hold in
 * one text.
 */
export function* recordPieces(record: InspectionRecord): Iterable<string> {
  const whole = json({ ...record, documents: [] });
  const at = whole.indexOf(NO_DOCUMENTS) + NO_DOCUMENTS.length - 1;
  yield whole.slice(0, at);
  for (const [index, document] of record.documents.entries())
    yield `${index > 0 ? "," : ""}\n    ${JSON.stringify(document, undefined, 2).replaceAll("\n", "\n    ")}`;
  yield `${record.documents.length > 0 ? "\n  " : ""}${whole.slice(at)}`;
}
