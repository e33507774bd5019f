import { fieldsAt } from "../document/field.js";
import { buildSchema, partsSchema, surveySchema } from "../generated/schemas.js";

/** Where a person finds a value, as the schema says it of the field. */
export type WhereFound = "data sheet" | "marking" | "letter" | "tape" | "panel schedule" | "law" | "plan";

const WORDS: Readonly<Record<WhereFound, string>> = {
  "data sheet": "It stands in the maker's data sheet.",
  marking: "It is marked on the thing itself.",
  letter: "A licensed engineer states it in a letter.",
  tape: "Measure it.",
  "panel schedule": "It stands in the schedule of the electrical panel, which the hall's electrician has.",
  law: "A law or standard gives it.",
  plan: "It is decided by whoever plans the build.",
};

const known = new Map<string, WhereFound | undefined>();

/** Where the value of a field is found; undefined where the schema does not say it. @param file of the catalogue or the survey, for a field of a part or a venue */
export function whereFound(path: string, file?: string): WhereFound | undefined {
  // A figure of a part that is named in an assembly is found where that of any part is.
  const [, ofPart] = file === undefined ? (/\.assembly\.\d+\.([a-z-]+)$/u.exec(path) ?? []) : [];
  if (ofPart !== undefined) return whereFound(`part.${ofPart}`, "parts");
  // The name of a part may be that of a group of a survey: which file it is says what is meant.
  const of = file === undefined ? "build" : file.endsWith(".md") ? "survey" : "part";
  const key = `${of} ${path}`;
  if (!known.has(key)) {
    const schemas = { build: [buildSchema], part: [partsSchema, surveySchema], survey: [surveySchema] }[of];
    const said = (field: string): WhereFound | undefined =>
      schemas.flatMap((schema) => fieldsAt(schema, field)).find(({ found }) => found !== undefined)?.found as
        | WhereFound
        | undefined;
    // What has no name of its own in the schema, such as an item of a list, is found where its group is.
    known.set(key, said(path) ?? said(path.slice(0, Math.max(0, path.lastIndexOf(".")))));
  }
  return known.get(key);
}

/** The same in a sentence; empty where the schema does not say it. */
export const whereFoundWords = (found: WhereFound | undefined): string => (found === undefined ? "" : WORDS[found]);
