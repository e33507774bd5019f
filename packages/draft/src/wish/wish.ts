import type { Survey } from "@plumbmark/core";
import type { Mapping } from "../data.js";
import type { Extent } from "../search/shapes.js";

export type SupportOfFace = "flown" | "stacked" | "wall" | "deck";

/** What a client asks for. Lengths are in metres; what was not said is undefined. */
export interface Wish {
  readonly name: string;
  readonly title: string;
  readonly file: string;
  readonly practice: "us" | "iec" | undefined;
  readonly onSite: string | undefined;
  readonly shows: "text" | "picture" | "colour" | undefined;
  readonly text: { readonly lines: number | undefined; readonly characters: number | undefined };
  readonly width: Extent | undefined;
  readonly height: Extent | undefined;
  readonly support: SupportOfFace | undefined;
  readonly right: number | undefined;
  readonly upstage: number | undefined;
  readonly under: string | undefined;
  readonly on: string | undefined;
  readonly trim: Extent | undefined;
  readonly outOf: string | undefined;
  readonly panel: string | undefined;
  readonly overPeople: boolean | undefined;
  readonly light: Mapping | undefined;
  readonly powerFrom: readonly string[];
  readonly dataAt: string | undefined;
  readonly pictureAt: string | undefined;
  /** The name of its venue, as written. */
  readonly venueName: string | undefined;
  /** What is known of the venue: its survey, or the facts the wish has of it. */
  readonly venue: Survey | undefined;
}
