import type { Mapping } from "../data.js";
import type { OnSide } from "../search/shapes.js";

/** What is still to be found out, in words, and who is asked. */
export interface ToFindOut {
  readonly what: string;
  readonly by: string;
}

/** Whom to ask for what is decided when the build is laid out. */
export const PLANNER = "whoever plans the build";

/** What was decided, why, and whether every other way was looked at. */
export interface Decision {
  /** Which of the ten: size, viewing, cable order, power … */
  readonly what: string;
  /** In a sentence. */
  readonly why: string;
  /** Whether nothing better was left unlooked at. */
  readonly exact: boolean;
  /** What was not looked at, where something was not. */
  readonly gap?: string;
  /** Computed values it rests on, by path: each has its working. */
  readonly figures: readonly string[];
}

/** Why a choice fell out: the demand that was in the way, and by how much. */
export interface Fallen {
  readonly rule: string;
  readonly says: string;
  /** What would do, where that can be told. */
  readonly nearest?: string;
}

/** A draft as it grows: what is decided so far is in its front matter. */
export interface Scheme {
  readonly columns: number;
  readonly rows: number;
  /** Degrees the panels are turned by, where they lie on their side. */
  readonly rotated?: OnSide;
  readonly panel: string;
  readonly lot: string | undefined;
  readonly matter: Mapping;
  readonly decisions: readonly Decision[];
  /** What is the other way round than in the scheme it came from, in words: `over two circuits`. */
  readonly variant: readonly string[];
  /** What a decision leaves for somebody to find out that no rule asks for. */
  readonly toFindOut?: readonly ToFindOut[];
}

export type Decided = { readonly ok: true; readonly scheme: Scheme } | { readonly ok: false; readonly fallen: Fallen };

/** The scheme with a part of its front matter put in and a decision told. */
export const decided = (scheme: Scheme, matter: Mapping, ...decisions: readonly Decision[]): Scheme => ({
  ...scheme,
  matter: { ...scheme.matter, ...matter },
  decisions: [...scheme.decisions, ...decisions],
});

export const fallen = (rule: string, says: string, nearest?: string): Decided => ({
  ok: false,
  fallen: { rule, says, ...(nearest === undefined ? {} : { nearest }) },
});
