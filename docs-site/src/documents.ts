import { type Print, printer, type System } from "@plumbmark/calc";
import type { Build, DocumentEntry, Inspection } from "@plumbmark/core";
import { Names } from "./names.js";

/** One document of the record with its page. */
export interface Published {
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
}

/** A document that cannot be read is taken to lift and to use mains: the cautions are never lost by a slip of the pen. */
function dangers(build: Build | undefined): Pick<Published, "lifts" | "mains"> {
  if (!build) return { lifts: false, mains: false };
  const { reader, faces } = build;
  if (reader.data("") === undefined) return { lifts: true, mains: true };
  return {
    lifts: reader.data("rigging") !== undefined || faces.some(({ support }) => support === "flown"),
    mains: reader.data("power") !== undefined || reader.data("faces") !== undefined,
  };
}

/** Every document of an inspection with its page, title and what it is about. */
export function published({ record, builds }: Inspection): readonly Published[] {
  const names = new Names();
  const digits = String(record.documents.length).length;
  return record.documents.map((entry, index) => {
    const inspected = builds.get(entry.file);
    const system = inspected?.system ?? "metric";
    return {
      entry,
      page: `builds/${names.take(entry.build ?? entry.file)}.html`,
      number: `1.${String(index + 1).padStart(Math.max(2, digits), "0")}`,
      title: entry.title?.trim() || entry.build?.trim() || entry.file,
      ...(inspected ? { build: inspected.build } : {}),
      system,
      print: printer(system),
      ...dangers(inspected?.build),
    };
  });
}
