/** A document a limit, table or formula rests on. */
export interface Source {
  /** The standard, handbook or body: `NFPA 70`. */
  readonly document: string;
  readonly title?: string;
  readonly edition?: string;
  readonly clause?: string;
  /** What it says, in our words, in a line: it stands behind `rests on` in the report. */
  readonly says: string;
  /** The electrical practice it belongs to; a build of the other practice does not rest on it. */
  readonly practice?: "us" | "iec";
  /**
   * How well it is known: seen in print (`published`, often a restatement), from memory, common practice,
   * or a definition or arithmetic that needs no document.
   */
  readonly basis: "published" | "memory" | "practice" | "definition";
}

export const sourceTable = <const T extends Readonly<Record<string, Source>>>(table: T): T => table;
