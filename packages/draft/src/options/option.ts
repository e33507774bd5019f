import type { CheckEntry } from "@plumbmark/core";
import type { Decision, Scheme, ToFindOut } from "../decide/decision.js";

/** A figure of an option, as the model computes it from the document as it is written. */
export interface Figure {
  readonly path: string;
  /** In the SI unit of its kind; undefined where it cannot be told. */
  readonly value: number | undefined;
  readonly text: string;
}

/** What is bought or hired because it is not owned, or not free on the days. */
export interface Shortfall {
  readonly part: string;
  /** In metres, of what is counted by length. */
  readonly metres?: number;
  /** The same as it is written. */
  readonly length?: string;
  readonly count: number;
}

/** Pieces of one part, and of one length where it is counted by length. */
export interface NeededPiece {
  readonly part: string;
  readonly kind: string;
  /** In metres. */
  readonly metres?: number;
  readonly length?: string;
  readonly count: number;
}

/** One way to make what was wished for. */
export interface Option {
  readonly scheme: Scheme;
  readonly document: string;
  /** Width by height as they are read off a tape: `9 ft 10 in × 1 ft 7-3/4 in`. */
  readonly size: string;
  readonly figures: ReadonlyMap<string, Figure>;
  readonly open: number;
  readonly toFindOut: readonly ToFindOut[];
  readonly decisions: readonly Decision[];
  /** Everything that has to be there, spares among it, by part and length. */
  readonly needs: readonly NeededPiece[];
  readonly shortfall: readonly Shortfall[];
  /** What has to happen before the build, though nothing has to be bought for it, in sentences. */
  readonly possibleIf: readonly string[];
  readonly advised: readonly CheckEntry[];
}

/** A face or a turn of one that fell out, and the demand that was in the way. */
export interface OutOfIt {
  readonly panel: string;
  readonly columns: number;
  readonly rows: number;
  readonly variant: readonly string[];
  readonly rule: string;
  readonly says: string;
  readonly nearest?: string;
}
