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

/** A list of JSON that is filled piece by piece: its name, and how many lists and objects it stands in. */
interface Filled {
  readonly name: string;
  readonly depth: number;
  readonly items: Iterable<unknown>;
}

/**
 * Data as `json` prints it, one list of it item by item: what a hundred thousand documents came to is longer than Node.js
 * can hold in one text.
 * @param data has the list empty
 */
export function* jsonPieces(data: object, { name, depth, items }: Filled): Iterable<string> {
  const whole = json(data);
  const indent = `\n${"  ".repeat(depth)}`;
  // No text of JSON has a line feed in it, so this is the list and no words that look like it.
  const list = `${indent}"${name}": []`;
  const at = whole.indexOf(list) + list.length - 1;
  yield whole.slice(0, at);
  let between = "";
  for (const item of items) {
    yield `${between}${indent}  ${JSON.stringify(item, undefined, 2).replaceAll("\n", `${indent}  `)}`;
    between = ",";
  }
  yield `${between === "" ? "" : indent}${whole.slice(at)}`;
}

/** A record, document by document. */
export const recordPieces = (record: InspectionRecord): Iterable<string> =>
  jsonPieces({ ...record, documents: [] }, { name: "documents", depth: 1, items: record.documents });
