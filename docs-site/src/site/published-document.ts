import { type Print, printer, type System } from "@plumbmark/calc";
import type { Build, DocumentEntry, Inspected } from "@plumbmark/core";
import { Names } from "./names.js";

/** One document of the record with its page. */
export interface PublishedDocument {
  readonly entry: DocumentEntry;
  readonly page: string;
  /** Number of its sheet in the set. */
  readonly number: string;
  readonly title: string;
  /** The computed design; undefined for a catalogue or stock file. */
  readonly build?: Build;
  readonly system: System;
  /** Prints a kept value in the document's own units. */
  readonly print: Print;
  readonly lifts: boolean;
  readonly mains: boolean;
  /** A supply of it is a generator. */
  readonly generator: boolean;
}

/** A document that cannot be read is taken to lift, to use mains and to have a generator: the cautions are never lost by a slip of the pen. */
function dangers(build: Build | undefined): Pick<PublishedDocument, "lifts" | "mains" | "generator"> {
  if (!build) return { lifts: false, mains: false, generator: false };
  const { reader, faces } = build;
  if (reader.data("") === undefined) return { lifts: true, mains: true, generator: true };
  return {
    lifts: reader.data("rigging") !== undefined || faces.some(({ support }) => support === "flown"),
    mains: reader.data("power") !== undefined || reader.data("faces") !== undefined,
    generator: reader
      .keys("power.supplies")
      .some((name) => reader.data(`power.supplies.${name}.generator`) !== undefined),
  };
}

/** Where the sheet of a document is. */
export type SheetPlace = Pick<PublishedDocument, "page" | "number">;

/** The sheets of all documents by path; the numbers follow their order. */
export function placesOf(
  files: readonly { readonly path: string; readonly name?: string }[],
): ReadonlyMap<string, SheetPlace> {
  const names = new Names();
  const digits = Math.max(2, String(files.length).length);
  return new Map(
    files.map(({ path, name }, index) => [
      path,
      { page: `builds/${names.take(name ?? path)}.html`, number: `1.${String(index + 1).padStart(digits, "0")}` },
    ]),
  );
}

/** A document with its page, title and what it is about; without a model for a catalogue or stock file. */
export function publishedDocument(entry: DocumentEntry, place: SheetPlace, inspected?: Inspected): PublishedDocument {
  const system = inspected?.system ?? "metric";
  return {
    entry,
    ...place,
    title: entry.title?.trim() || entry.build?.trim() || entry.file,
    ...(inspected ? { build: inspected.build } : {}),
    system,
    print: printer(system),
    ...dangers(inspected?.build),
  };
}
