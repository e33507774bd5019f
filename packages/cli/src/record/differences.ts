import type { AgainstEntry, DocumentEntry, InspectionRecord, Verdict } from "@plumbmark/core";
import { against, type VerdictChange, without } from "./changes.js";

/** What a reviewer asks of a change besides the verdict, in the document's own units. */
export interface Figures {
  readonly weight: string;
  readonly power: string;
  readonly margin: string;
}

/** A record with the figures of its builds, by the document's path. */
export interface RecordWithFigures {
  readonly record: InspectionRecord;
  readonly figures: ReadonlyMap<string, Figures>;
}

/** One document that is not what it was: another verdict, other checks against it, or other figures. */
export interface Difference extends Pick<VerdictChange, "file" | "appears" | "goes"> {
  /** Undefined where the document is not there. */
  readonly was: Verdict | undefined;
  readonly is: Verdict | undefined;
  readonly figures: { readonly [K in keyof Figures]?: { readonly was: string; readonly is: string } };
}

interface State {
  readonly entry: DocumentEntry;
  readonly figures: Figures;
}

/** The builds of a record; files of the catalogue with mistakes are none. */
const buildsOf = ({ record, figures }: RecordWithFigures): ReadonlyMap<string, State> =>
  new Map(
    record.documents.flatMap((entry): readonly (readonly [string, State])[] => {
      const found = figures.get(entry.file);
      return found ? [[entry.file, { entry, figures: found }]] : [];
    }),
  );

function figureChanges(was: State | undefined, is: State | undefined): Difference["figures"] {
  if (!was || !is) return {};
  const names = ["weight", "power", "margin"] as const;
  return Object.fromEntries(
    names
      .filter((name) => was.figures[name] !== is.figures[name])
      .map((name) => [name, { was: was.figures[name], is: is.figures[name] }]),
  );
}

function differenceOf(file: string, was: State | undefined, is: State | undefined): Difference {
  const [then, now] = [against(was?.entry.checks ?? []), against(is?.entry.checks ?? [])];
  return {
    file,
    was: was?.entry.verdict,
    is: is?.entry.verdict,
    appears: without(now, then),
    goes: is ? without(then, now) : [],
    figures: figureChanges(was, is),
  };
}

const isDifferent = ({ was, is, appears, goes, figures }: Difference): boolean =>
  was !== is || appears.length > 0 || goes.length > 0 || Object.keys(figures).length > 0;

/** What became ready, what broke, and what changed in weight, power and margin. */
export function differences(before: RecordWithFigures, now: RecordWithFigures): readonly Difference[] {
  const [old, current] = [buildsOf(before), buildsOf(now)];
  const files = [...new Set([...old.keys(), ...current.keys()])].sort();
  return files.map((file) => differenceOf(file, old.get(file), current.get(file))).filter(isDifferent);
}

/** The comparison as it stands in a record. */
export const differencesEntry = (
  revision: string,
  before: InspectionRecord,
  found: readonly Difference[],
): AgainstEntry => ({
  standard: before.standard,
  revision,
  documents: found.map(({ file, was, is, figures }) => ({
    file,
    ...(was ? { was } : {}),
    ...(is ? { is } : {}),
    ...figures,
  })),
});
