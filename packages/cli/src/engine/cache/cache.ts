import { join } from "node:path";
import { edition } from "./edition.js";
import { cacheFolder } from "./location.js";
import { Store } from "./store.js";

/** What earlier runs came to for one docs repository. A file for each kind, so that none is read that is not asked for. */
export class ResultCache {
  /** What others have to know of a document, by git's name of its content; what YAML was read as, in the same way. */
  readonly outlines: Store;
  /** What documents came to, by everything that matters to it. */
  readonly entries: Store;
  /** What rules of plugins came to on documents, by their code and everything they can see. */
  readonly plugins: Store;
  /** Which sheets stand in which site. */
  readonly sheets: Store;
  /** What came of wishes, by everything a draft rests on. */
  readonly wishes: Store;

  /**
   * @param folder where it is kept; without one, for the run only
   * @param edition of Plumbmark: what another came to is not looked at
   */
  constructor(
    folder: string | undefined,
    readonly edition: string,
  ) {
    const store = (kind: string): Store =>
      new Store(folder === undefined ? undefined : join(folder, `${kind}-${edition.slice(0, 16)}`), edition);
    this.outlines = store("outlines");
    this.entries = store("entries");
    this.plugins = store("plugins");
    this.sheets = store("sheets");
    this.wishes = store("wishes");
  }

  save(): void {
    for (const each of [this.outlines, this.entries, this.plugins, this.sheets, this.wishes]) each.save();
  }
}

/** What is cached for a docs repository; undefined when this Plumbmark cannot be told from others. */
export const cacheFor = (root: string): ResultCache | undefined =>
  edition === undefined ? undefined : new ResultCache(cacheFolder(root), edition);
