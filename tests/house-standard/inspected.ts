import { type CheckEntry, type FolderStandard, type InspectionRecord, openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { approvedAsTheyAre, SMALL, starter, TODAY } from "../documents/repository.js";

export interface Given {
  /** The house standard of the root, without its name. */
  readonly root?: string;
  /** House standards of folders, without their names. */
  readonly folders?: Readonly<Record<string, string>>;
  /** Documents by path; the small build in `builds/a.md` when left out. */
  readonly documents?: Readonly<Record<string, string>>;
  readonly today?: string;
}

const named = (name: string, text: string): string => `house-standard: ${name}\n${text}`;

/** Inspects documents by the house standards given, every check listed; all rules are asked where none are named. */
export function inspected(
  { root = "", folders = {}, documents = { "builds/a.md": SMALL }, today = TODAY }: Given,
  asked: typeof rules = rules,
): InspectionRecord {
  const folderStandards: readonly FolderStandard[] = Object.entries(folders).map(([folder, text]) => ({
    folder,
    path: `${folder}/house-standard.yaml`,
    text: named(`House of ${folder}`, text),
  }));
  const files = {
    ...starter(),
    houseStandard: { path: "house-standard.yaml", text: named("House", root) },
    folderStandards,
    documents: Object.entries(documents).map(([path, text]) => ({ path, text })),
  };
  return openRepository(approvedAsTheyAre(files), asked, { today, every: true, turns: false }).all();
}

/** Checks of one rule on one document, the first when none is named. */
export function checksOf(rule: string, given: Given, file?: string): readonly CheckEntry[] {
  // The others are known, so that a house standard can set them, and are not asked; the one may be a rule of the house.
  const asked = rules.map((each) => (each.id === rule ? each : { ...each, checks: () => [] }));
  const { documents } = inspected(given, asked);
  const document = file === undefined ? documents[0] : documents.find((each) => each.file === file);
  return (document?.checks ?? []).filter((check) => check.rule === rule);
}

/** What is said of a house standard that cannot be used. */
export function refusal(given: Given): string {
  try {
    inspected(given);
  } catch (error) {
    return (error as Error).message;
  }
  return "";
}
