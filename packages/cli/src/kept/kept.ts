import { join } from "node:path";
import { edition } from "./edition.js";
import { keptIn } from "./place.js";
import { Shelf } from "./shelf.js";

/** What earlier inspections came to. */
export interface Kept {
  /** Which Plumbmark it came from. */
  readonly edition: string;
  /** What others have to know of a document, by git's name of its content. */
  readonly outlines: Shelf;
  /** What documents came to, by everything that matters to it. */
  readonly entries: Shelf;
  /** What plugins came to on all documents, by their code and everything they could see. */
  readonly plugins: Shelf;
  /** What plugins that look at one document at a time came to on each, in the same way. */
  readonly outcomes: Shelf;
  /** Which sheets stand in which site. */
  readonly sheets: Shelf;
}

/** What a plugin came to on a whole repository is much, and of use only while nothing is changed, here or in what is staged. */
const OF_PLUGINS = 4;

/** @param folder where it is kept; without one, for the run only */
export const keptAt = (folder: string | undefined, by: string): Kept => {
  const shelf = (kind: string, unused?: number): Shelf =>
    new Shelf(folder && join(folder, `${kind}-${by.slice(0, 16)}`), by, unused);
  return {
    edition: by,
    outlines: shelf("outlines"),
    entries: shelf("entries"),
    plugins: shelf("plugins", OF_PLUGINS),
    outcomes: shelf("outcomes"),
    sheets: shelf("sheets"),
  };
};

/** What is kept for a docs repository; undefined when it is not wanted, or this Plumbmark cannot be told from others. */
export const keptFor = (root: string, wanted: boolean): Kept | undefined =>
  wanted && edition !== undefined ? keptAt(keptIn(root), edition) : undefined;

export function save(kept: Kept | undefined): void {
  kept?.outlines.save();
  kept?.entries.save();
  kept?.plugins.save();
  kept?.outcomes.save();
  kept?.sheets.save();
}
