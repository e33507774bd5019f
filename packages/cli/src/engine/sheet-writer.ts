import type { DocumentFile } from "@plumbmark/core";
import {
  type DocumentSummary,
  type Hashed,
  type Into,
  type PublishInput,
  type Put,
  putFile,
  type Sheet,
  type SheetDependencies,
  type SheetPlaces,
  sheetOfDocument,
  siteOf,
  type Unshown,
} from "@plumbmark/docs-site";
import { pictureReader } from "../source/read-picture.js";

/** Documents whose sheets are to be made; plain data but for the rules. */
export interface SheetsInput extends Omit<PublishInput, "picture" | "unshown" | "accepted"> {
  /** Root of the docs repository, for its pictures. */
  readonly root: string;
  /** Where the sheets of all documents are. */
  readonly places: SheetPlaces;
  readonly into: Into;
}

/** A sheet that was made: what the pages about all documents show of it, and its files. */
export interface MadeSheet {
  readonly summary: DocumentSummary;
  readonly put: readonly Put[];
}

/** The same with what it rests on, for the cache, and the pictures it does not show. */
export interface WrittenSheet extends MadeSheet {
  readonly put: readonly Hashed[];
  readonly dependencies: SheetDependencies;
  readonly unshown: readonly Unshown[];
}

/** Writes the files of a sheet one after another. */
export const putSheet = ({ summary, files }: Sheet, into: Into): Pick<WrittenSheet, "summary" | "put"> => {
  const put: Hashed[] = [];
  for (const file of files) put.push(putFile(into, file));
  return { summary, put };
};

/** Inspects documents and writes their sheets and the pictures they show. @throws StandardError */
export function sheetWriter({ root, places, into, ...input }: SheetsInput): (file: DocumentFile) => WrittenSheet {
  let unshown: Unshown[] = [];
  const told = (each: Unshown): void => void unshown.push(each);
  // Where all sheets are has been told by a site that was made with these house standards.
  const site = siteOf({ ...input, picture: pictureReader(root), unshown: told, accepted: true }, places);
  /** A picture that many sheets show is written once. */
  const shown = new Map<string, Hashed>();
  const show = (picture: readonly [string, Uint8Array], into: Into): Hashed => {
    const put = shown.get(picture[0]) ?? putFile(into, picture);
    shown.set(picture[0], put);
    return put;
  };
  return (file) => {
    unshown = [];
    const made = sheetOfDocument(file, site);
    const { summary, put } = putSheet(made, into);
    const pictures = [...made.pictures].map((each) => show(each, into));
    return { summary, put: [...put, ...pictures], dependencies: made.dependencies(), unshown };
  };
}
