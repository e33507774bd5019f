import { resolve } from "node:path";
import { type InspectionRecord, StandardError } from "@plumbmark/core";
import type { Engine, InspectRequest } from "../engine/engine.js";
import { sourceAt } from "../git/scope.js";
import { apartFromApprovals, changesEntry, verdictChanges } from "../record/changes.js";
import { differences, differencesEntry } from "../record/differences.js";
import { againstText } from "../report/against-text.js";
import { recordPieces, together } from "../report/pieces.js";
import { revisionText } from "../report/revision-text.js";
import type { CommandContext } from "../terminal/context.js";
import { Trouble } from "../terminal/trouble.js";

/** A house standard is a YAML file; anything else names a revision of git. */
export const isStandard = (against: string): boolean => /\.ya?ml$/iu.test(against);

function print(context: CommandContext, as: string, record: InspectionRecord, text: () => string): void {
  if (as === "json") for (const piece of together(recordPieces(record))) context.print(piece, "json");
  else context.print(text(), "report");
}

/** Tells which documents change verdict by another house standard than the one they were judged by. */
export async function compareStandards(
  against: string,
  record: InspectionRecord,
  request: InspectRequest,
  as: string,
  context: CommandContext,
  engine: Engine,
): Promise<void> {
  const { record: found } = await engine.inspect({ ...request, standard: against });
  const before = apartFromApprovals(found);
  const changes = verdictChanges(apartFromApprovals(record), before);
  const compared = { ...record, against: changesEntry(before, changes) };
  print(context, as, compared, () => againstText(record, before, changes, context));
}

const reasonOf = (error: Trouble | StandardError): string =>
  error instanceof Trouble ? `${error.says} ${error.mend}` : error.message;

/** Tells how the work tree differs from a revision of git; gives the record of the work tree. */
export async function compareRevision(
  revision: string,
  given: InspectRequest,
  as: string,
  context: CommandContext,
  engine: Engine,
): Promise<InspectionRecord> {
  const source = await sourceAt(context.folder, revision);
  const request = { ...given, every: true, figures: true };
  const now = await engine.inspect(request);
  // A document that was asked for need not have been there, so all of them are looked at.
  const standard = request.standard === undefined ? undefined : resolve(request.folder, request.standard);
  const before = await engine
    .inspect({ ...request, folder: now.root, paths: [], standard, source })
    .catch((error: unknown) => {
      if (!(error instanceof Trouble || error instanceof StandardError)) throw error;
      throw new Trouble(
        `The documents as they were in \`${revision}\` cannot be inspected. ${reasonOf(error)}`,
        "Name a later revision.",
      );
    });
  const found = differences(before, now).filter(({ file }) => now.wants(file));
  const { record } = now;
  const compared = { ...record, against: differencesEntry(revision, before.record, found) };
  print(context, as, compared, () => revisionText(revision, record, found, context));
  return record;
}
