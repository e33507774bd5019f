import { createHash } from "node:crypto";

// The lines of a shelf: a key without blanks, a check, a value. Some check those before them.

const NEWLINE = 10;
const SPACE = 32;
export const CHECK = 32;

/** The edition is part of it: what another one wrote is as damaged. */
export const checkOf = (by: string, key: string, value: string): string =>
  createHash("sha256").update(`${by}\n${key} ${value}`).digest("hex").slice(0, CHECK);

export type Span = readonly [from: number, to: number];

/** The key of a line that checks all lines before it which were written with it, as many bytes as it says. */
const TOGETHER = "@";
/** Whoever has looked at so many lines one by one is going to look at most of them. */
export const MANY = 16;

const checkOfLines = (by: string, lines: Buffer): string =>
  createHash("sha256").update(`${by}\n`).update(lines).digest("hex").slice(0, CHECK);

/** Lines that were written at once, with one that checks them all where they are many. */
export const checkedTogether = (by: string, lines: readonly Buffer[]): Buffer => {
  const all = Buffer.concat(lines);
  if (lines.length <= MANY) return all;
  return Buffer.concat([all, Buffer.from(`${TOGETHER} ${checkOfLines(by, all)} ${all.length}\n`)]);
};

export interface Found {
  /** Where what follows the key stands in each line; the key is what stands before its first blank. The last one counts. */
  readonly spans: Map<string, Span>;
  /** Lines that check those before them. */
  readonly together: readonly Span[];
}

export function linesIn(bytes: Buffer): Found {
  const spans = new Map<string, Span>();
  const together: Span[] = [];
  for (let at = 0; at < bytes.length; ) {
    const end = bytes.indexOf(NEWLINE, at);
    const blank = bytes.indexOf(SPACE, at);
    if (end < 0 || blank < 0) break;
    const key = blank < end ? bytes.toString("latin1", at, blank) : undefined;
    if (key === TOGETHER) together.push([at, end]);
    else if (key !== undefined) spans.set(key, [blank + 1, end]);
    at = end + 1;
  }
  return { spans, together };
}

/** Stretches of lines that are, by the line that checks them together, as they were written. */
export const soundIn = (by: string, bytes: Buffer, { together }: Found): readonly Span[] =>
  together.flatMap(([at, end]) => {
    const [, check, size] = bytes.toString("latin1", at, end).split(" ");
    const from = at - Number(size);
    return from >= 0 && check === checkOfLines(by, bytes.subarray(from, at)) ? [[from, at] as const] : [];
  });
