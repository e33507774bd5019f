import type { SourceFile } from "@plumbmark/core";

export type CaseOutcome = "holds" | "fails" | "open";

/** One check that has to come out. What is left out is not compared. */
export interface Expectation {
  readonly outcome: CaseOutcome;
  /** Path of what it is about: `power.circuits.stage-4`. */
  readonly at?: string;
  /** As it is printed: `17.2 A`. It agrees within half of its last digit. */
  readonly measured?: string;
  /** As it is printed: `16 A`. */
  readonly allowed?: string;
  /** A part of the sentence. */
  readonly says?: string;
  /** Paths that have to be written down. */
  readonly missing?: readonly string[];
  /** The document, when there are several. */
  readonly file?: string;
}

/** What surrounds the documents. */
export interface CaseContext {
  /** The parts catalogue: YAML, or several files of it. */
  readonly parts?: string | readonly SourceFile[];
  /** The survey of a venue: its Markdown, or several files of them. */
  readonly surveys?: string | readonly SourceFile[];
  /** The stock list: YAML, or several files of it. */
  readonly stock?: string | readonly SourceFile[];
  /** Paths of letters and other papers that are there; none without it. */
  readonly papers?: readonly string[];
  /** The house standard, as YAML; the defaults of the product without it. */
  readonly houseStandard?: string;
  /** The day of the inspection; 2027-01-01 without it. */
  readonly today?: string;
  /** Ids of other rules that exist, as a waiver or a house standard may name them. */
  readonly known?: readonly string[];
  /** Outcomes the rule never has, so that no case of them is asked for. */
  readonly never?: readonly CaseOutcome[];
}

/** A document, or a small repository of them, with the result the rule has to have. */
export interface Case extends CaseContext {
  readonly name: string;
  /** The Markdown of one document, or of several by their paths. */
  readonly documents: string | Readonly<Record<string, string>>;
  /**
   * `holds`: every check holds. `fails`: at least one fails, and has a mend. `open`: at least one is open, none fails.
   * A list: these checks, and no other that does not hold.
   */
  readonly expects: CaseOutcome | readonly Expectation[];
}
