import type { Value } from "@plumbmark/calc";
import type { Stay } from "../stock/bookings.js";

/** What several builds may use at once. */
export type SharedKind = "circuit" | "supply" | "outlets" | "point" | "structure" | "processor" | "item" | "lot";

/** What is shared, by name. */
export interface SharedName {
  /** What kind of thing it is. */
  readonly of: SharedKind;
  /** Its name: `stage-4`, `front-beam.F1`, a part. */
  readonly name: string;
  /** The venue it belongs to, as venues are compared; left out of what is owned. */
  readonly venue?: string;
  /** Which of several of one part: a length, or a serial number. */
  readonly which?: string;
}

/** What one build uses of something shared, as plain data. */
export interface SharedUse extends SharedName {
  /** Where in the document. */
  readonly path: string;
  /** How much, by leg where there are several; in the unit. Empty where it cannot be told. */
  readonly amounts: Readonly<Record<string, number>>;
  /** UCUM code of the amounts. */
  readonly unit: string;
  /** What the house itself has on it, as this document says; of several documents the most counts once. */
  readonly beside?: number;
  /** How much there may be in all, as this document has it. */
  readonly allowed?: number;
  /** Uses of one and the same thing count once: a processor that two builds of one venue name at one place. */
  readonly once?: string;
  /** Ports of a processor that are taken. */
  readonly ports?: readonly number[];
  /** Raster, rate and depth it is fed with. */
  readonly signal?: string;
  /** The amount rests on a guess. */
  readonly guess?: true;
}

/** A use with whose it is and when. */
export interface Booked extends SharedUse {
  /** The document that uses it. */
  readonly file: string;
  /** Days it is used, those of the way there and back among them where it is owned; undefined when not written down. */
  readonly stay: Stay | undefined;
  /** Whether that document is a draft: then nothing is promised. */
  readonly draft: boolean;
}

/** A use as it stands in a record, with its days. */
export interface UseEntry extends SharedUse {
  readonly from: string;
  /** Left out where the build stays. */
  readonly to?: string;
}

/** What one build uses of something shared, as values with their workings. */
export interface OwnUse extends SharedName {
  readonly path: string;
  /** What messages call it: `Circuit stage-4`. */
  readonly label: string;
  readonly amounts: Readonly<Record<string, Value>>;
  readonly unit: string;
  readonly beside?: Value;
  readonly allowed: Value;
  readonly once?: string;
  readonly ports?: readonly number[];
  readonly signal?: string;
}

/** Something shared as a text to compare by. */
export const sharedKey = ({ of, venue = "", name, which = "" }: SharedName): string =>
  [of, venue, name, which].join("\u0000");
