import type { FileRole, RepositoryFiles, Rule } from "@plumbmark/core";

/** A docs repository as it lies on the disk. */
export interface RepositoryOnDisk {
  /** Its folder, absolute. */
  readonly root: string;
  readonly files: RepositoryFiles;
  readonly rules: readonly Rule[];
  /** Plugins its house standard names: their rules are carried out in processes of their own. */
  readonly plugins: readonly string[];
  /** Pages of the site it was published to that are there, from its root: `site/rules/power.fed-once.html`. */
  readonly pages?: ReadonlySet<string>;
  /** What a file of it would be that is not there yet; undefined for none of its business. */
  readonly roleOf: (path: string, text: string) => FileRole | undefined;
}

/** What the server is given of the world. */
export interface Host {
  /** The day of the inspection, `2027-03-05`. */
  readonly today: () => string;
  /**
   * Reads the docs repository a file belongs to, absolute.
   * @throws Error that says why it cannot be read
   */
  readonly open: (path: string) => Promise<RepositoryOnDisk>;
  /** The text of a file as it lies on the disk, absolute; undefined where there is none that can be read. */
  readonly text: (path: string) => Promise<string | undefined>;
  /** Rules of plugins with what they came to on these files; `wanted` are the documents they are asked about. */
  readonly pluginRules: (root: string, files: RepositoryFiles, wanted: readonly string[]) => Promise<readonly Rule[]>;
  readonly version: string;
}
