import type { Unsure, World } from "../../document/unsure.js";
import { otherEnds, restingOnGuesses, withinBounds, withoutGuesses } from "../../findings/unsure-checks.js";
import { partsUsed } from "../../model/reading/parts-used.js";
import { catalogueIn } from "../../repository/parts.js";
import { type DocumentModel, modelInWorld } from "../document-model.js";
import { type InspectionTask, judgeDocument } from "../judge-document.js";
import type { CheckEntry } from "../record.js";
import type { Snapshot } from "../snapshot.js";

/**
 * Guesses and bounds of a document and of the catalogue, and what is assumed of the parts it names; a part's stand under
 * its name.
 */
function unsureIn({ unsure, build }: DocumentModel, { catalogue }: Snapshot): readonly Unsure[] {
  const all = [...catalogue.parts.values()].flatMap((part) =>
    part.unsure.map((each) => ({ ...each, path: `${part.name}.${each.path}`, part })),
  );
  if (all.every(({ sure }) => sure !== "assumed")) return [...unsure, ...all];
  const used = new Set(partsUsed(build.reader).map(({ part }) => part.name));
  return [...unsure, ...all.filter(({ sure, part }) => sure !== "assumed" || used.has(part.name))];
}

/** The checks of a document; where something is not sure, what rests on it is looked at in other worlds and opened. */
export function sureChecks(model: DocumentModel, asked: InspectionTask): readonly CheckEntry[] {
  const { document, snapshot, subject } = asked;
  const unsure = unsureIn(model, snapshot);
  if (unsure.length === 0) return judgeDocument(model, asked);
  // What holds has to be looked at again.
  const all = { ...asked, subject: { ...subject, every: true } };
  const inOther = (world: World): readonly CheckEntry[] => {
    const other = snapshot.withCatalogue(catalogueIn(snapshot.catalogue, world));
    return judgeDocument(modelInWorld(model, document, other, world), all);
  };
  const bounds = unsure.filter(({ other }) => other !== undefined);
  const guesses = unsure.filter(({ sure }) => sure === "guess");
  const ends = bounds.length === 0 ? [] : otherEnds(bounds);
  const bounded = withinBounds(
    judgeDocument(model, all),
    ends.map(({ at, world }) => ({ at, checks: inOther(world) })),
  );
  const sure = guesses.length === 0 ? bounded : restingOnGuesses(bounded, guesses, inOther(withoutGuesses(guesses)));
  model.kept?.earlierWorlds.clear();
  return sure;
}
