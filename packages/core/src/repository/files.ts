import type { SharedUse } from "../model/shared/use.js";
import type { Promised, Stay } from "../model/stock/bookings.js";

/** A text file of the docs repository; `path` is relative to its root, with forward slashes. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}

/** What the other documents of a repository have to know of one. Plain data, so that it can be kept. */
export interface Outline {
  readonly path: string;
  /** Its `build`. */
  readonly name?: string;
  /** Its `practice`, by which the levels and settings of a rule are chosen. */
  readonly practice?: string;
  /** The venue it is built in, as venues are compared. */
  readonly venue?: string;
  /** First and last day on site. */
  readonly stay?: Stay;
  readonly draft?: true;
  /** What it promises out of the stock. */
  readonly promises: readonly Promised[];
  /**
   * What it uses that others may use, too: it rests on the catalogue, the stock and the house standards besides. Left
   * out where nobody has worked it out.
   */
  readonly uses?: readonly SharedUse[];
}

/** A document that is not inspected; its text is read where somebody asks what it uses. */
export interface OtherDocument extends Outline {
  readonly text?: string;
}

/** A build document; its outline goes with it where it is known already, so that it need not be read twice. */
export interface DocumentFile extends SourceFile {
  readonly outline?: Outline;
}

/** The house standard of a folder below the root; it is for what lies in that folder. */
export interface FolderStandard extends SourceFile {
  /** The folder from the root, with forward slashes. */
  readonly folder: string;
}

/** Everything an inspection reads. The caller reads the disk; nothing here does. */
export interface RepositoryFiles {
  readonly houseStandard?: SourceFile;
  /** House standards deeper in the tree, each added to those above it. */
  readonly folderStandards?: readonly FolderStandard[];
  readonly parts: readonly SourceFile[];
  /** The holdings; where they stand in several files, the first of those. */
  readonly stock?: SourceFile;
  /** The other files of the holdings, by path. */
  readonly moreStock?: readonly SourceFile[];
  /** Surveys of venues: Markdown, known by the key `survey`. */
  readonly surveys?: readonly SourceFile[];
  /** Paths of letters and other papers that documents refer to; they are not read. Undefined where nobody looked. */
  readonly papers?: readonly string[];
  /** Wishes, from which documents are drafted. No inspection reads them: an editor looks for names in them. */
  readonly wishes?: readonly SourceFile[];
  readonly documents: readonly DocumentFile[];
  /** Documents that are not inspected this time; the ones that are share names and lots with them. */
  readonly others?: readonly OtherDocument[];
}

/** Every file of the holdings, in the order in which they are read. */
export const stockFiles = ({
  stock,
  moreStock = [],
}: Pick<RepositoryFiles, "stock" | "moreStock">): readonly SourceFile[] => (stock ? [stock, ...moreStock] : moreStock);

/** The holdings as they stand among the files of a repository; nothing is named that is not there. */
export const asStock = ([stock, ...moreStock]: readonly SourceFile[]): Pick<
  RepositoryFiles,
  "stock" | "moreStock"
> => ({
  ...(stock ? { stock } : {}),
  ...(moreStock.length > 0 ? { moreStock } : {}),
});
