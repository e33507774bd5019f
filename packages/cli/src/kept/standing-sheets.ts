import { createHash } from "node:crypto";
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
import type { Shelf } from "./shelf.js";

/** A sheet that stands in a site, with everything it rests on. */
export interface KeptSheet {
  readonly key: string;
  readonly summary: DocumentSummary;
  readonly dependencies: SheetDependencies;
  readonly stamps: ReadonlyMap<string, FileStamp>;
}

/** The same for another process: what its files are is told by what is in them. */
interface Standing extends Pick<KeptSheet, "key" | "summary" | "dependencies"> {
  readonly files: readonly (readonly [path: string, hash: string])[];
}

/** Sheets that earlier processes put into one site. */
export interface StandingSheets {
  /** The sheet of a document, when it was made under this key and all of its files are what was written. */
  readonly get: (document: string, key: string) => KeptSheet | undefined;
  readonly set: (
    document: string,
    sheet: Pick<Standing, "key" | "summary" | "dependencies">,
    put: readonly Hashed[],
  ) => void;
}

/** The stamp of a file that has this in it; the stamp is taken first, so that it tells when the file changes meanwhile. */
function stampWith(path: string, hash: string): FileStamp | undefined {
  try {
    const stamp = fileStamp(path);
    return stamp !== undefined && contentHash(readFileSync(path)) === hash ? stamp : undefined;
  } catch {
    return undefined;
  }
}

/** @param folder of the site; sheets of another one are not looked at */
export function standingSheets(shelf: Shelf, folder: string): StandingSheets {
  const nameOf = (document: string): string =>
    createHash("sha256")
      .update(JSON.stringify([folder, document]))
      .digest("hex");
  return {
    get(document, key) {
      const found = shelf.get(nameOf(document)) as Standing | undefined;
      if (found?.key !== key) return undefined;
      const stamps = new Map<string, FileStamp>();
      for (const [path, hash] of found.files) {
        const stamp = stampWith(join(folder, path), hash);
        if (stamp === undefined) return undefined;
        stamps.set(path, stamp);
      }
      return { key, summary: found.summary, dependencies: found.dependencies, stamps };
    },
    set(document, { key, summary, dependencies }, put) {
      shelf.set(nameOf(document), { key, summary, dependencies, files: put.map(({ path, hash }) => [path, hash]) });
    },
  };
}
