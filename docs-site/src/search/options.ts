/** What is searched and what is kept of each entry; the page that searches has to open the index with the same. */
export const INDEX = { fields: ["title", "words"], storeFields: ["title", "kind", "href", "says"] };

/** Beginnings of words count, and so does a word with about a third of its letters wrong. */
export const QUERY = { prefix: true, fuzzy: 0.3, maxFuzzy: 3, boost: { title: 3 }, combineWith: "AND" as const };

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
