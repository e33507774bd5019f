import type { Known } from "@plumbmark/calc";
import { LIKE_IN_SURVEY, withLike } from "../document/like.js";
import type { Mistake } from "../document/mistake.js";
import { readQuantities } from "../document/quantities.js";
import { validate } from "../document/validate.js";
import { frontMatterOf } from "../document/yaml/front-matter.js";
import { type Data, type Placed, readYaml } from "../document/yaml/yaml.js";
import { surveySchema } from "../generated/schemas.js";
import type { SourceFile } from "../repository/files.js";

/** A venue as it was surveyed: what is written in the front matter, with its places. Its prose is for people. */
export interface Survey {
  /** What builds call it under `venue`. */
  readonly name: string;
  readonly title: string;
  readonly file: string;
  readonly placed: Placed;
  /** Its quantities by path: `circuits.stage-4.breaker`. */
  readonly values: ReadonlyMap<string, Known>;
  readonly mistakes: readonly Mistake[];
}

export interface Surveys {
  readonly byName: ReadonlyMap<string, Survey>;
  /** Mistakes by file, those of files that are no usable survey among them. */
  readonly mistakes: ReadonlyMap<string, readonly Mistake[]>;
}

const textOf = (data: Data, key: string): string | undefined => {
  const value =
    data !== null && typeof data === "object" && !Array.isArray(data) ? (data as Record<string, Data>)[key] : undefined;
  return typeof value === "string" ? value : undefined;
};

/** The survey a Markdown file holds; undefined when it has no front matter with the key `survey`. */
export function readSurvey(file: SourceFile): Survey | undefined {
  const matter = frontMatterOf(file.text);
  if (!matter) return undefined;
  const placed = withLike(readYaml(file.text, matter.from, matter.to), LIKE_IN_SURVEY);
  const name = textOf(placed.data, "survey");
  if (name === undefined) return undefined;
  const sound = placed.mistakes.length === 0;
  const { values, mistakes: unread } = sound
    ? readQuantities(surveySchema, placed)
    : { values: new Map<string, Known>(), mistakes: [] };
  const mistakes = [...placed.mistakes, ...(sound ? validate("survey", placed) : []), ...unread];
  return { name, title: textOf(placed.data, "title") ?? name, file: file.path, placed, values, mistakes };
}

/** Reads the surveys of a repository; a venue that is surveyed in two files is a mistake of the later one. */
export function readSurveys(files: readonly SourceFile[]): Surveys {
  const byName = new Map<string, Survey>();
  const mistakes = new Map<string, readonly Mistake[]>();
  for (const file of files) {
    const survey = readSurvey(file);
    if (!survey) continue;
    const found = [...survey.mistakes];
    const earlier = byName.get(survey.name);
    const place = survey.placed.places.get("survey");
    if (earlier && place)
      found.push({
        rule: "document.parts",
        path: "survey",
        place,
        says: `The venue \`${survey.name}\` is also surveyed in ${earlier.file}.`,
        mend: "Keep one of them, or give one of the venues another name.",
      });
    else byName.set(survey.name, survey);
    if (found.length > 0) mistakes.set(file.path, found);
  }
  return { byName, mistakes };
}
