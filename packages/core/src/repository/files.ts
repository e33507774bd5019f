/** A text file of the docs repository; `path` is relative to its root, with forward slashes. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}

/** Everything an inspection reads. The caller reads the disk; nothing here does. */
export interface RepositoryFiles {
  readonly houseStandard?: SourceFile;
  readonly parts: readonly SourceFile[];
  readonly stock?: SourceFile;
  readonly documents: readonly SourceFile[];
}
