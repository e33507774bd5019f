import type { DocumentFile } from "@plumbmark/core";
import {
  type Hashed,
  type Into,
  type Listed,
  type Places,
  type PublishInput,
  type Put,
  putFile,
  type Rests,
  type Sheet,
  sheetMaker,
  siteOf,
  type Unshown,
} from "@plumbmark/docs-site";
import { pictureReader } from "../files/read-picture.js";

/** Documents whose sheets are to be made; plain data but for the rules. */
export interface Sheets extends Omit<PublishInput, "picture" | "unshown" | "accepted"> {
  /** Root of the docs repository, for its pictures. */
  readonly root: string;
  /** Where the sheets of all documents are. */
  readonly places: Places;
  readonly into: Into;
}

/** A sheet that was made: what the pages about all documents show of it, and its files. */
export interface Made {
  readonly listed: Listed;
  readonly put: readonly Put[];
}

/** One of a document, with what it rests on, for whoever keeps it, and the pictures it does not show. */
export interface MadeOf extends Made {
  readonly put: readonly Hashed[];
  readonly rests: Rests;
  readonly unshown: readonly Unshown[];
}

/** Writes the files of a sheet one after another. */
export const putSheet = ({ listed, files }: Sheet, into: Into): Pick<MadeOf, "listed" | "put"> => {
  const put: Hashed[] = [];
  for (const file of files) put.push(putFile(into, file));
  return { listed, put };
};

/** Inspects documents and writes their sheets and the pictures they show. @throws StandardError */
export function sheetWriter({ root, places, into, ...input }: Sheets): (file: DocumentFile) => MadeOf {
  let unshown: Unshown[] = [];
  const told = (each: Unshown): void => void unshown.push(each);
  // Where all sheets are has been told by a site that was made with these house standards.
  const site = siteOf({ ...input, picture: pictureReader(root), unshown: told, accepted: true }, places);
  const sheet = sheetMaker(input, site);
  /** A picture that many sheets show is written once. */
  const shown = new Map<string, Hashed>();
  const show = (picture: readonly [string, Uint8Array], into: Into): Hashed => {
    const put = shown.get(picture[0]) ?? putFile(into, picture);
    shown.set(picture[0], put);
    return put;
  };
  return (file) => {
    unshown = [];
    const made = sheet(file);
    const { listed, put } = putSheet(made, into);
    const pictures = [...made.pictures].map((each) => show(each, into));
    return { listed, put: [...put, ...pictures], rests: made.rests(), unshown };
  };
}
