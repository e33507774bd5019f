import { readFileSync } from "node:fs";
import { join } from "node:path";
import {
  contentHash,
  type DocumentSummary,
  type FileStamp,
  fileStamp,
  type Hashed,
  type SheetDependencies,
} from "@plumbmark/docs-site";
import { hashOf } from "./keys.js";
import type { Store } from "./store.js";

/** A sheet that stands in a site as it was published, with everything it dependencies on. */
export interface PublishedSheet {
  readonly summary: DocumentSummary;
  readonly dependencies: SheetDependencies;
  readonly stamps: ReadonlyMap<string, FileStamp>;
}

/** What is stored of it: its files are told by what is in them. */
interface Stored extends Pick<PublishedSheet, "summary" | "dependencies"> {
  readonly key: string;
  readonly files: readonly (readonly [path: string, hash: string])[];
}

/** Which sheets earlier publishes put into one site. */
export interface PublishedIndex {
  /** The sheet of a document, when it was made under this key and all of its files are what was written. */
  readonly get: (document: string, key: string) => PublishedSheet | undefined;
  readonly set: (document: string, sheet: Omit<Stored, "files">, put: readonly Hashed[]) => void;
}

/** The stamp of a file that has this in it; it is taken first, so that it tells when the file changes meanwhile. */
function stampWith(path: string, hash: string): FileStamp | undefined {
  try {
    const stamp = fileStamp(path);
    return stamp !== undefined && contentHash(readFileSync(path)) === hash ? stamp : undefined;
  } catch {
    return undefined;
  }
}

/** @param folder of the site; sheets of another one are not looked at */
export function publishedIndex(store: Store, folder: string): PublishedIndex {
  const nameOf = (document: string): string => hashOf([folder, document]);
  return {
    get(document, key) {
      const found = store.get(nameOf(document)) as Stored | undefined;
      if (found?.key !== key) return undefined;
      const stamps = new Map<string, FileStamp>();
      for (const [path, hash] of found.files) {
        const stamp = stampWith(join(folder, path), hash);
        if (stamp === undefined) return undefined;
        stamps.set(path, stamp);
      }
      return { summary: found.summary, dependencies: found.dependencies, stamps };
    },
    set(document, { key, summary, dependencies }, put) {
      store.set(nameOf(document), { key, summary, dependencies, files: put.map(({ path, hash }) => [path, hash]) });
    },
  };
}
