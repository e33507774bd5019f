import type { TURNS, Turns } from "../findings/turns.js";
import type { WhereFound } from "../findings/where-found.js";
import type { UseEntry } from "../model/shared/use.js";
/** The record of an inspection, as `schema/record.schema.json` describes it. Units are UCUM codes. */
export interface QuantityEntry {
  readonly value: number;
  readonly unit: string;
  readonly sense?: "at most" | "at least" | "exactly";
}

/** What is allowed between two ends. */
export interface RangeEntry {
  readonly least: number;
  readonly most: number;
  readonly unit: string;
  readonly sense: "within";
  /** There is no one value. */
  readonly value?: undefined;
}

export interface WorkingEntry {
  readonly formula: string;
  readonly with: string;
  readonly result: QuantityEntry;
  readonly source?: string;
  /** Figures in it that another file states, each with who states it and where. */
  readonly from?: readonly string[];
}

/** Where something stands in another file: the survey of a venue. */
export interface StatedInEntry {
  readonly file: string;
  readonly path: string;
  readonly line: number;
  /** Who states it: `the survey of 2026-10-02 by R. Tallow`. */
  readonly by: string;
}

/** `draft`: of a document of that status, in which no check of a `shall` fails. */
export type Verdict = "ready" | "draft" | "not ready";

/** One figure at which a check would come out otherwise. */
export interface TurnsAtEntry {
  /** Where it stands, or belongs. */
  readonly path: string;
  /** The check holds with the figure at most, or at least, this. */
  readonly sense: "at most" | "at least";
  readonly value: number;
  readonly unit: string;
  /** As it is printed: `212 ft`. */
  readonly text: string;
  /** Who has to be asked for it: what a licensed person states is never proposed as an edit. */
  readonly asks?: "engineer" | "electrician";
}

/** Something that is not written down. */
export interface WaitsForEntry {
  /** Where it belongs. */
  readonly path: string;
  /** The file it belongs in, when that is not the document itself. */
  readonly file?: string;
  /** Place of the venue where a person finds it. */
  readonly place?: string;
  /** What it is. */
  readonly what: string;
  /** Whose it is. */
  readonly of?: string;
  /** Where a person finds it. */
  readonly found?: WhereFound;
}

/** A change of its file that would put a check right. */
export interface MendEntry {
  /** What it takes the place of; of no length where something is put in. */
  readonly at: Omit<CheckEntry["at"], "path">;
  /** What stands there. */
  readonly was: string;
  readonly becomes: string;
  /** Whether it is the one answer; else it is one of several, or needs a person. Sure ones of a check belong together. */
  readonly sure: boolean;
}

export type Outcome = "holds" | "fails" | "open" | "waived";

export interface CheckEntry {
  readonly rule: string;
  /** The plugin the rule comes from; left out for the built-in rules. */
  readonly from?: string;
  readonly level: "shall" | "should" | "note";
  readonly outcome: Outcome;
  readonly at: {
    readonly path: string;
    readonly line: number;
    readonly column: number;
    readonly endLine: number;
    readonly endColumn: number;
  };
  readonly measured?: QuantityEntry;
  readonly allowed?: QuantityEntry | RangeEntry;
  readonly share?: number;
  readonly says: string;
  readonly mend?: string;
  /** Changes that would put it right: every sure one, or one of the others. */
  readonly mends?: readonly MendEntry[];
  readonly missing?: readonly string[];
  /** What it waits for, in words, where something of the document or a part is not written down. */
  readonly "waits-for"?: readonly WaitsForEntry[];
  /** What the survey of the venue states of it, where it does not hold. */
  readonly "stated-in"?: readonly StatedInEntry[];
  /** Paths of the guesses it rests on: it is open, however it would come out. */
  readonly "rests-on-guesses"?: readonly string[];
  /** Paths of what is assumed within an interval of a source, and it rests on. */
  readonly "rests-on-assumed"?: readonly string[];
  /** Paths of the bounds at whose ends it comes out one way and the other: it is open. */
  readonly "rests-on-bounds"?: readonly string[];
  /** How it would come out were every guess right. */
  readonly "if-right"?: "holds" | "fails";
  /** The figure at which it would come out otherwise. */
  readonly "turns-at"?: TurnsAtEntry;
  /** The figure its rule names for that; no part of the record. */
  readonly [TURNS]?: Turns;
  /** The mistake it only follows from; put right, the check is judged. */
  readonly "follows-from"?: { readonly file?: string; readonly path: string; readonly line: number };
  readonly waiver?: {
    readonly because: string;
    readonly by: string;
    readonly until: string;
    /** The worst figure it accepts, as written. */
    readonly accepts?: string;
  };
  readonly working?: readonly WorkingEntry[];
  readonly sources: readonly {
    readonly id: string;
    readonly document: string;
    readonly title?: string;
    readonly edition?: string;
    readonly clause?: string;
    readonly says?: string;
    readonly basis?: string;
  }[];
}

/** One waiver of a document, in the register of waivers. */
export interface WaiverEntry {
  readonly rule?: string;
  readonly where?: string;
  readonly because?: string;
  readonly by?: string;
  readonly until?: string;
  /** The worst figure it accepts, as written. */
  readonly accepts?: string;
  /** Left out where it is for what fails. */
  readonly of?: "open";
  readonly state: "in force" | "expired" | "unused" | "incomplete" | "refused" | "exceeded";
  readonly at: CheckEntry["at"];
  /** Places it excuses, or would excuse were it in force. */
  readonly excuses: readonly string[];
}

/** Who approved a document, and the code of what it is now. */
export interface ApprovalEntry {
  readonly state: "approved" | "changed" | "missing";
  /** Of the content as it is now. */
  readonly code: string;
  readonly by?: string;
  readonly on?: string;
  /** The code that was approved. */
  readonly given?: string;
  /** What is another since, where git knows. */
  readonly changes?: readonly string[];
}

export interface Counts {
  readonly checks: number;
  readonly holds: number;
  readonly fails: number;
  readonly open: number;
  readonly waived: number;
}

export interface DocumentEntry {
  readonly file: string;
  readonly build?: string;
  readonly title?: string;
  readonly revision?: number | string;
  readonly status?: string;
  /** Files of the house standards it was judged by, the root's first. */
  readonly standards?: readonly string[];
  readonly verdict: Verdict;
  readonly counts: Counts;
  /** Left out for a draft, and where the front matter cannot be read. */
  readonly approval?: ApprovalEntry;
  readonly checks: readonly CheckEntry[];
  /** The register of its waivers; left out when it has none. */
  readonly waivers?: readonly WaiverEntry[];
  /** What it uses on its days that other builds may use, too; left out of drafts and of documents without days. */
  readonly uses?: readonly UseEntry[];
}

/** A house standard that was inspected by. */
export interface StandardEntry {
  readonly name: string;
  /** Its file; the defaults of the product have none. */
  readonly file?: string;
  /** The folder it is for, when it is not the root's. */
  readonly folder?: string;
  readonly edition?: string;
  readonly "in-force"?: string;
}

/** A figure in words that is another than it was. */
export interface WasAndIs {
  readonly was: string;
  readonly is: string;
}

/** What came out otherwise by another house standard, or in another revision. */
export interface AgainstEntry {
  readonly standard: string;
  /** Of git, when a revision was compared. */
  readonly revision?: string;
  readonly documents: readonly {
    readonly file: string;
    /** Left out where the document is not there. */
    readonly was?: Verdict;
    readonly is?: Verdict;
    readonly weight?: WasAndIs;
    readonly power?: WasAndIs;
    readonly margin?: WasAndIs;
  }[];
}

export interface Totals extends Counts {
  readonly documents: number;
  readonly ready: number;
  readonly draft: number;
  readonly "not-ready": number;
}

export interface InspectionRecord {
  readonly record: 2;
  readonly standard: string;
  /** The root's, then those of folders. */
  readonly standards: readonly StandardEntry[];
  /** What tells these holdings from others; records that have the same share one stock. */
  readonly holdings?: string;
  /** Only when two house standards were compared: the documents whose verdict is another. */
  readonly against?: AgainstEntry;
  readonly documents: readonly DocumentEntry[];
  readonly totals: Totals;
}

export const countsOf = (checks: readonly CheckEntry[]): Counts => {
  const of = (outcome: Outcome): number => checks.filter((check) => check.outcome === outcome).length;
  return { checks: checks.length, holds: of("holds"), fails: of("fails"), open: of("open"), waived: of("waived") };
};

/**
 * `ready` when no check of a `shall` rule fails or is open. A draft in which none fails is a `draft`: open checks do not
 * count in it, and it is never ready.
 */
export function verdictOf(checks: readonly CheckEntry[], status: string | undefined): Verdict {
  const draft = status === "draft";
  const against = checks.some(
    ({ level, outcome }) => level === "shall" && (outcome === "fails" || (outcome === "open" && !draft)),
  );
  // Nothing that rests on a guess is ever ready, whatever its level and whoever waives it.
  const guessed = !draft && checks.some((check) => check["rests-on-guesses"] !== undefined);
  if (against || guessed) return "not ready";
  return draft ? "draft" : "ready";
}

/** Adds up the entries of a record. */
export function totalsOf(documents: readonly DocumentEntry[]): Totals {
  const sum = (key: keyof Counts): number => documents.reduce((total, { counts }) => total + counts[key], 0);
  const of = (verdict: Verdict): number => documents.filter((each) => each.verdict === verdict).length;
  return {
    documents: documents.length,
    ready: of("ready"),
    draft: of("draft"),
    "not-ready": of("not ready"),
    checks: sum("checks"),
    holds: sum("holds"),
    fails: sum("fails"),
    open: sum("open"),
    waived: sum("waived"),
  };
}
