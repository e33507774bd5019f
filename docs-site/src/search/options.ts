/** What is searched and what is kept of each entry; the page that searches has to open the index with the same. */
export const INDEX = { fields: ["title", "words"], storeFields: ["title", "kind", "href", "says"] };

/** Keys are many, and most words of the trade are like one of them: what is of the house itself comes before. */
const KEYS_WEIGH = 0.3;

/** Beginnings of words count, and so does a word with about a third of its letters wrong. */
export const QUERY = {
  prefix: true,
  fuzzy: 0.3,
  maxFuzzy: 3,
  boost: { title: 3 },
  combineWith: "AND" as const,
  boostDocument: (_id: unknown, _term: string, stored?: Readonly<Record<string, unknown>>): number =>
    stored?.kind === "key" ? KEYS_WEIGH : 1,
};

/** One thing that can be found. */
export interface SearchEntry {
  readonly id: number;
  readonly title: string;
  readonly kind: string;
  /** Path of the site. */
  readonly href: string;
  /** A line about it. */
  readonly says: string;
  /** Further words it is found by. */
  readonly words: string;
}
