import { resolve } from "node:path";
import {
  type AgainstEntry,
  type Inspected,
  type Inspection,
  type InspectionRecord,
  inspection,
  StandardError,
  type Verdict,
} from "@plumbmark/core";
import { originAt } from "../git/scope.js";
import { recordPieces, together } from "../report/pieces.js";
import { revisionText } from "../report/revision-text.js";
import type { Surroundings } from "../surroundings.js";
import { Trouble } from "../trouble.js";
import { against, type Change, without } from "./against.js";
import { type Opening, open } from "./open.js";
import { type Figures, figuresOf } from "./standing.js";

/** One document that is not what it was: another verdict, other checks against it, or other figures. */
export interface Difference extends Pick<Change, "file" | "appears" | "goes"> {
  /** Undefined where the document is not there. */
  readonly was: Verdict | undefined;
  readonly is: Verdict | undefined;
  readonly figures: { readonly [K in keyof Figures]?: { readonly was: string; readonly is: string } };
}

interface State {
  readonly root: string;
  readonly found: Inspection;
  readonly wants: (path: string) => boolean;
}

/** Inspects one state whole. */
async function stateOf(opening: Opening): Promise<State> {
  const { root, files, rules, wants, unreadable } = await open(opening);
  const gone = unreadable[0];
  if (gone) throw new Trouble(`${gone.path}: ${gone.says}`, gone.mend);
  return { root, found: inspection(files, rules, { today: opening.today, every: true }), wants };
}

function figureChanges(was: Inspected | undefined, is: Inspected | undefined): Difference["figures"] {
  if (!was || !is) return {};
  const [old, current] = [figuresOf(was), figuresOf(is)];
  const names = ["weight", "power", "margin"] as const;
  return Object.fromEntries(
    names.filter((name) => old[name] !== current[name]).map((name) => [name, { was: old[name], is: current[name] }]),
  );
}

function differenceOf(file: string, was: Inspected | undefined, is: Inspected | undefined): Difference {
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
export function differences(before: Inspection, now: Inspection): readonly Difference[] {
  const files = [...new Set([...before.builds.keys(), ...now.builds.keys()])].sort();
  return files.map((file) => differenceOf(file, before.builds.get(file), now.builds.get(file))).filter(isDifferent);
}

const entryOf = (revision: string, before: InspectionRecord, found: readonly Difference[]): AgainstEntry => ({
  standard: before.standard,
  revision,
  documents: found.map(({ file, was, is, figures }) => ({
    file,
    ...(was ? { was } : {}),
    ...(is ? { is } : {}),
    ...figures,
  })),
});

/** Tells how the work tree differs from a revision of git; gives the record of the work tree. */
export async function againstRevision(
  revision: string,
  opening: Opening,
  as: string,
  around: Surroundings,
): Promise<InspectionRecord> {
  const origin = await originAt(around.folder, revision);
  const now = await stateOf(opening);
  // A document that was asked for need not have been there, so all of them are looked at.
  const standard = opening.standard === undefined ? undefined : resolve(opening.folder, opening.standard);
  const before = await stateOf({ ...opening, folder: now.root, paths: [], standard, origin }).catch(
    (error: unknown) => {
      if (!(error instanceof Trouble || error instanceof StandardError)) throw error;
      const says = error instanceof Trouble ? `${error.says} ${error.mend}` : error.message;
      throw new Trouble(
        `The documents as they were in \`${revision}\` cannot be inspected. ${says}`,
        "Name a later revision.",
      );
    },
  );
  const found = differences(before.found, now.found).filter(({ file }) => now.wants(file));
  const { record } = now.found;
  const pieces =
    as === "json"
      ? together(recordPieces({ ...record, against: entryOf(revision, before.found.record, found) }))
      : [revisionText(revision, record, found, around)];
  for (const piece of pieces) around.print(piece);
  return record;
}
