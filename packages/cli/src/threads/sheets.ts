import {
  type Into,
  type Listed,
  type PublishInput,
  type Put,
  putFile,
  type Sheet,
  type Site,
  sheetsOf,
  siteOf,
} from "@plumbmark/docs-site";
import { pictureReader, type Unshown } from "../files/read-picture.js";

/** Documents whose sheets are to be made; plain data but for the rules. */
export interface Sheets extends Omit<PublishInput, "picture"> {
  /** Root of the docs repository, for its pictures. */
  readonly root: string;
  /** Where the sheets of all documents are. */
  readonly places: Site["places"];
  readonly into: Into;
}

/** What was made: the documents for the pages about all of them, and the files. */
export interface Made {
  readonly listed: readonly Listed[];
  readonly put: readonly Put[];
}

/** What was made of documents, and the pictures that are not shown. */
export interface MadeSheets extends Made {
  readonly unshown: readonly Unshown[];
}

/** Writes sheets one after another. */
export function putSheets(sheets: Iterable<Sheet>, into: Into, onFile: () => void): Made {
  const listed: Listed[] = [];
  const put: Put[] = [];
  for (const sheet of sheets) {
    for (const file of sheet.files) {
      put.push(putFile(into, file));
      onFile();
    }
    listed.push(sheet.listed);
  }
  return { listed, put };
}

/** Inspects documents and writes their sheets and the pictures they show. @throws StandardError */
export function makeSheets({ root, places, into, ...input }: Sheets, onFile: () => void): MadeSheets {
  const unshown: Unshown[] = [];
  const picture = pictureReader(root, (each) => unshown.push(each));
  const site = siteOf({ ...input, picture }, places);
  const { listed, put } = putSheets(sheetsOf(input, site), into, onFile);
  const pictures = [...site.pictures].map((picture) => putFile(into, picture));
  return { listed, put: [...put, ...pictures], unshown };
}
