import type { ElementContent } from "hast";

/** What came of a wish: an option that needs nothing that is not there, only such that do, none, or a slip in its file. */
export type WishOutcome = "met" | "to buy" | "unmet" | "unread";

/** What the site shows of a wish. Plain data, so that it can be kept for the next time. */
export interface WishEntry {
  readonly file: string;
  readonly title: string;
  readonly venue?: string;
  readonly onSite?: string;
  readonly outcome: WishOutcome;
  readonly options: number;
  /** The first option in a few words: its size and panels. */
  readonly first?: string;
  /** What its page shows below the title. */
  readonly content: readonly ElementContent[];
}
