import type { Place } from "./place.js";

/** A change of a file's text: what stands at `place` becomes `text`. */
export interface Edit {
  readonly place: Place;
  readonly text: string;
}

/** A change to what was most likely meant. */
export interface MeantEdit extends Edit {
  /** Nothing else can be meant, so that it can be written without asking. */
  readonly sure?: boolean;
}

/** An author's mistake, with its place: data, never an exception. */
export interface Mistake {
  /** The rule that carries it. */
  readonly rule: "document.front-matter" | "document.parts";
  readonly path: string;
  readonly place: Place;
  /** What was found. */
  readonly says: string;
  /** What may stand there. */
  readonly mend: string;
  /** What was most likely meant. It is never taken for written. */
  readonly edit?: MeantEdit;
  /** What else could be meant: an editor offers it. */
  readonly offers?: readonly Edit[];
  /** Something that could stand there, where nobody can tell what was meant: it only tells what waits for the mistake. */
  readonly standIn?: Edit;
  /** It is a key that is not known: what is missing beside it may be what was meant. */
  readonly unknownKey?: true;
}
