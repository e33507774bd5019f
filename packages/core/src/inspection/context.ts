import type { Promised } from "../model/stock/bookings.js";
import type { DocumentFile, Outline, RepositoryFiles } from "../repository/files.js";
import type { HouseStandardSettings } from "../repository/house-standard.js";
import { outlineOf, type ReadDocument, readDocument } from "../repository/outline.js";
import { type Catalogue, readCatalogue } from "../repository/parts.js";
import { readStock } from "../repository/stock.js";
import type { Standards } from "../standard/chain.js";
import { openStandards } from "../standard/use.js";

export interface InspectionContext {
  /** The house standard of the root; a document in a folder with its own is judged by both. */
  readonly standard: HouseStandardSettings;
  readonly standards: Standards;
  readonly catalogue: Catalogue;
  readonly stock: ReturnType<typeof readStock>;
  readonly names: ReadonlyMap<string, readonly string[]>;
  readonly files: readonly string[];
  readonly today: string;
  readonly promises: readonly Promised[];
  /** Ids of the rules in force. */
  readonly rules?: readonly string[];
}

/** Paths of every file that is read: what a link may lead to. */
export const pathsOf = ({
  documents,
  others,
  parts,
  stock,
  houseStandard,
  folderStandards,
}: RepositoryFiles): readonly string[] =>
  [stock, houseStandard, ...documents, ...(others ?? []), ...parts, ...(folderStandards ?? [])].flatMap((file) =>
    file ? [file.path] : [],
  );

/** Reads what surrounds the documents, whose outlines are given. @throws StandardError when the house standard cannot be used. */
export function contextFrom(files: RepositoryFiles, own: readonly Outline[], today: string): InspectionContext {
  const standards = openStandards(files);
  const outlines = [...own, ...(files.others ?? [])].sort((one, other) => (one.path < other.path ? -1 : 1));
  const names = new Map<string, string[]>();
  for (const { name, path } of outlines) if (name !== undefined) names.set(name, [...(names.get(name) ?? []), path]);
  return {
    standard: standards.root.settings,
    standards,
    catalogue: readCatalogue(files.parts),
    stock: readStock(files.stock),
    names,
    files: pathsOf(files),
    promises: outlines.flatMap(({ promises }) => promises),
    today,
  };
}

/** Reads what surrounds the documents, and the documents. @throws StandardError when the house standard cannot be used. */
export function contextOf(
  files: RepositoryFiles,
  today: string,
): InspectionContext & { readonly opened: readonly ReadDocument[] } {
  const opened = files.documents.map((file) => readDocument(file));
  return { ...contextFrom(files, files.documents.map(knownOutline), today), opened };
}

/** What the others have to know of a document; read from its text where it does not go with it. */
export const knownOutline = (file: DocumentFile): Outline => file.outline ?? outlineOf(file);
