import type { Place } from "./place.js";

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
}
