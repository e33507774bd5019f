import { asMeant } from "../../document/edited.js";
import type { Mistake } from "../../document/mistake.js";
import { type Cause, withCauses } from "../../findings/consequences.js";
import { type ReadDocument, readDocument, withChanges } from "../../repository/outline.js";
import { surveyAsMeant } from "../../venue/survey.js";
import { type DocumentModel, modelOf, rewrittenModel } from "../document-model.js";
import { type InspectionTask, judgeDocument } from "../judge-document.js";
import type { CheckEntry } from "../record.js";
import type { Snapshot } from "../snapshot.js";

/** Mistakes of the catalogue: a check waits for one only if it would come out otherwise without it. */
const catalogueCauses = ({ catalogue }: Snapshot): readonly Cause[] =>
  [...catalogue.mistakes].flatMap(([file, mistakes]) => mistakes.map((mistake) => ({ file, mistake })));

/** Mistakes of the survey of a build's venue, and the snapshot in which they are put right. */
function surveyCauses(
  { build }: DocumentModel,
  snapshot: Snapshot,
): { readonly causes: readonly Cause[]; readonly by: Snapshot; readonly unread: boolean } {
  const survey = build.reader.venue?.survey;
  const file = snapshot.files.surveys?.find(({ path }) => path === survey?.file);
  if (!survey || !file || survey.mistakes.length === 0) return { causes: [], by: snapshot, unread: false };
  const meant = surveyAsMeant(survey, file);
  return {
    causes: survey.mistakes.map((mistake) => ({ file: survey.file, mistake })),
    by: snapshot.withSurvey(meant),
    unread: meant.placed.data === null,
  };
}

/** Mistakes of the holdings that a build rests on, and the snapshot in which they are put right. */
function stockCauses(
  { build }: DocumentModel,
  snapshot: Snapshot,
): { readonly causes: readonly Cause[]; readonly by: Snapshot } {
  const causes = build.stockMistakes.flatMap(({ file, mistakes }) => mistakes.map((mistake) => ({ file, mistake })));
  return causes.length === 0 ? { causes, by: snapshot } : { causes, by: snapshot.withStock(snapshot.stock.meant()) };
}

const isForm = ({ rule }: Mistake): boolean => rule === "document.front-matter";
const isVenue = ({ rule, path }: Mistake): boolean => rule === "document.parts" && path === "venue";

/** Tells what only follows from mistakes: first of the document's form, then of the catalogue, the survey and the holdings, then of what the document refers to. */
export function explainMistakes(
  model: DocumentModel,
  checks: readonly CheckEntry[],
  asked: InspectionTask,
): readonly CheckEntry[] {
  const { mistakes } = model;
  const { document, snapshot } = asked;
  const catalogue = catalogueCauses(snapshot);
  const surveyed = surveyCauses(model, snapshot);
  const stocked = stockCauses(model, snapshot);
  if (mistakes.length + catalogue.length + surveyed.causes.length + stocked.causes.length === 0) return checks;
  const meant = (which: (mistake: Mistake) => boolean, by: Snapshot): readonly CheckEntry[] | undefined => {
    const known = new Map(by === snapshot ? [[document.file.text, model]] : []);
    const read = (text: string): DocumentModel => {
      const made = known.get(text) ?? withText(text, model, by, asked);
      known.set(text, made);
      return made;
    };
    const text = asMeant(document.file.text, (each) => read(each).mistakes.filter(which));
    const same = text === document.file.text && by === snapshot;
    return same ? undefined : judgeDocument(read(text), { ...asked, subject: { ...asked.subject, every: false } });
  };
  const unread = (document.placed?.data ?? null) === null;
  let left = checks;
  const marked = new Map<CheckEntry, CheckEntry>();
  const mark = (
    causes: readonly Cause[],
    which: (mistake: Mistake) => boolean,
    by: Snapshot,
    isUnread = unread && by === snapshot,
  ): void => {
    if (causes.length === 0) return;
    const made = withCauses(left, causes, { meant: isUnread ? undefined : meant(which, by), unread: isUnread });
    for (const [at, check] of left.entries()) if (made[at] !== check) marked.set(check, made[at] as CheckEntry);
    left = left.filter((check) => !marked.has(check));
  };
  const own = (which: (mistake: Mistake) => boolean): readonly Cause[] =>
    mistakes.filter(which).map((mistake) => ({ mistake }));
  mark(own(isForm), isForm, snapshot);
  // A part that is not found may stand in a file that cannot be read.
  if (catalogue.length > 0) mark(catalogue, () => true, snapshot.withCatalogue(snapshot.catalogue.meant()));
  mark(surveyed.causes, () => true, surveyed.by, surveyed.unread);
  mark(stocked.causes, () => true, stocked.by);
  // What a survey states is not there for a build that names another: its circuits, points and floors.
  mark(own(isVenue), isVenue, snapshot);
  mark(
    own((mistake) => !isForm(mistake)),
    () => true,
    snapshot,
  );
  return checks.map((check) => marked.get(check) ?? check);
}

/** A document with another text; what is laid over it is laid over that, too, where it still leads to something. */
function rewritten(document: ReadDocument, text: string): ReadDocument {
  // Its body is the same as a rule, and is not read again then.
  const other = readDocument({ ...document.file, text }, false, document.changes ? undefined : document);
  const [first, ...others] = document.changes ?? [];
  if (!first) return other;
  try {
    return withChanges(other, [first, ...others]);
  } catch (error) {
    if (error instanceof RangeError) return document;
    throw error;
  }
}

/**
 * The model of another text in place of a document's; what it looks at is noted with the rest. Where the repository is
 * the same and the document is being written, what does not rest on the mistakes is not looked at again.
 */
function withText(
  text: string,
  model: DocumentModel,
  by: Snapshot,
  { document, snapshot }: InspectionTask,
): DocumentModel {
  const { build, trace } = model;
  const read = text === document.file.text ? document : rewritten(document, text);
  const rules = (): readonly string[] => build.context.rules;
  const isSound = [document, read].every(
    ({ placed, markdown }) => (placed?.data ?? null) !== null && !markdown.refused,
  );
  if (by === snapshot && isSound) return rewrittenModel(model, read, by.withDocument(read), rules);
  return modelOf(read, by.withDocument(read), rules, trace);
}
