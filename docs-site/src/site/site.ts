import { type InspectionRecord, inForce, type Level, type OpenRepository, type Promised } from "@plumbmark/core";
import { linkTo } from "../pages/page.js";
import type { LotShapes } from "../pages/stock-shapes.js";
import type { RuleLink } from "../sheet/check.js";
import type { WishEntry } from "../wishes/wish-entry.js";
import type { DocumentSummary } from "./document-summary.js";
import type { SheetPlace } from "./published-document.js";
import type { PublishedRule } from "./stated-rule.js";

/** Where sheets are, by path of the document. */
export type SheetPlaces = Pick<ReadonlyMap<string, SheetPlace>, "get">;

/** A picture of an author's that is not shown. */
export interface Unshown {
  /** Where it stands, `builds/a.md:12:3`. */
  readonly at: string;
  readonly file: string;
  readonly src: string;
  readonly why: string;
}

/** Everything a sheet is made from besides its document. */
export interface Site {
  readonly repository: OpenRepository;
  /** The record without the documents. */
  readonly record: InspectionRecord;
  /** The day of the inspection. */
  readonly today: string;
  /** Where the sheet of every document is, by its path. */
  readonly places: SheetPlaces;
  /** Every rule that is known: built in, of plugins and of the house. */
  readonly rules: readonly PublishedRule[];
  /** Path of every rule's page by the rule's id. */
  readonly rulePaths: ReadonlyMap<string, string>;
  /** Bytes of a picture of the repository by its path from the root, or why there are none to be had. */
  readonly picture?: (path: string) => Uint8Array | string;
  /** Told of every picture that is not shown. */
  readonly unshown?: (picture: Unshown) => void;
  /** Pictures that are shown, by path of the site; each is added when the page that shows it is made. */
  readonly pictures: Map<string, Uint8Array>;
}

/** Everything the pages about all documents are made from. */
export interface SiteWithDocuments extends Site {
  readonly documents: readonly DocumentSummary[];
  /** Whether the prose of surveys is published: it holds what clients tell nobody else. */
  readonly venueProse?: boolean;
  /** What the documents promise out of the stock. */
  readonly promises: readonly Promised[];
  /** What came of each wish. */
  readonly wishes?: readonly WishEntry[];
  /** What each lot can become on its free days. */
  readonly shapes?: readonly LotShapes[];
}

/** Links to rules' pages as seen from `page`. */
export const ruleLinks =
  ({ rulePaths }: Site, page: string): RuleLink =>
  (id) => {
    const path = rulePaths.get(id);
    return path === undefined ? undefined : linkTo(page, path);
  };

/** The level a rule has in this house standard. */
export const levelInForce = ({ repository }: Site, { id, level }: PublishedRule): Level => {
  const { standards, standard } = repository;
  return inForce({ id, level, settings: {} }, [standards.root], standard.practice).level.value;
};
