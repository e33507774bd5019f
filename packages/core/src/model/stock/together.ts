import { standTogether, type Together } from "@plumbmark/calc";
import type { Stock } from "../../repository/stock.js";
import type { Promised } from "./bookings.js";

/** What the stock can make at the same time, by the documents' files, with those it cannot tell of. */
export interface BuildsTogether extends Together {
  /** Files with a face that names no lot, or a lot that is not in the stock list, or no number of panels or spares. */
  readonly unknown: readonly string[];
}

/** Nobody reads a table of more. */
const MOST_PAIRS = 500;

/**
 * Which builds of a repository can stand at the same time, drafts among them; dates play no part in it.
 * `lotless` are the files with a face that names no lot: what they take is not in the promises, and is not nought.
 */
export function buildsTogether(
  promises: readonly Promised[],
  { lots }: Stock,
  lotless: readonly string[] = [],
): BuildsTogether {
  const untold = ({ count, lot }: Promised): boolean => count === undefined || !lots.has(lot);
  const unknown = new Set([...promises.filter(untold).map(({ file }) => file), ...lotless]);
  const claims = promises.flatMap(({ file, lot, count }) =>
    unknown.has(file) || count === undefined ? [] : [{ build: file, lot, count }],
  );
  const counts = new Map([...lots].map(([name, { count }]) => [name, count]));
  return { ...standTogether(claims, counts, MOST_PAIRS), unknown: [...unknown] };
}
