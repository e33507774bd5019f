import type { Known } from "@plumbmark/calc";
import { asMeant } from "../document/edited.js";
import { LIKE_IN_SURVEY, withLike } from "../document/like.js";
import type { Mistake } from "../document/mistake.js";
import { written } from "../document/nothing-written.js";
import type { Implausible } from "../document/plausible.js";
import { readData } from "../document/read-data.js";
import { type Unsure, withAt } from "../document/unsure.js";
import { frontMatterOf } from "../document/yaml/front-matter.js";
import { type Data, type Placed, readYaml } from "../document/yaml/yaml.js";
import type { SourceFile } from "../repository/files.js";

/** A venue as it was surveyed: what is written in the front matter, with its places. Its prose is for people. */
export interface Survey {
  /** What builds call it under `venue`. */
  readonly name: string;
  readonly title: string;
  readonly file: string;
  /** Its front matter, with every `like` written out. */
  readonly placed: Placed;
  /** Its quantities by path: `circuits.stage-4.breaker`. */
  readonly values: ReadonlyMap<string, Known>;
  readonly mistakes: readonly Mistake[];
  /** What is written and is not of the size its field has. */
  readonly implausible: readonly Implausible[];
  /** Its guesses and bounds. */
  readonly unsure: readonly Unsure[];
}

export interface Surveys {
  readonly byName: ReadonlyMap<string, Survey>;
  /** Mistakes by file, those of files that are no usable survey among them. */
  readonly mistakes: ReadonlyMap<string, readonly Mistake[]>;
}

type Group = Readonly<Record<string, Data>>;

const isGroup = (data: Data | undefined): data is Group =>
  data !== null && typeof data === "object" && !Array.isArray(data);

const textOf = (data: Data, key: string): string | undefined => {
  const value = isGroup(data) ? data[key] : undefined;
  return typeof value === "string" ? value : undefined;
};

/** What a venue may be called; anything else is told by the schema, and known under no name. */
const NAME = /^[a-z0-9][a-z0-9-]*$/u;

/** Keys that nothing but a survey has in its front matter. */
const OF_A_SURVEY = ["surveyed", "measured-from", "places", "routes", "structure", "floors", "walls", "way-in"];

/** What a Markdown file is, as far as its front matter tells: a survey, one that was meant to be, or neither. */
export function surveyKind(text: string): "survey" | "meant" | "other" {
  const matter = frontMatterOf(text);
  if (!matter) return "other";
  const yaml = text.slice(matter.from, matter.to);
  if (/^survey[ \t]*:/mu.test(yaml)) return "survey";
  const { data } = readYaml(yaml);
  if (!isGroup(data)) return "other";
  if (Object.hasOwn(data, "survey")) return "survey";
  const keys = Object.keys(data);
  return keys.filter((key) => OF_A_SURVEY.includes(key)).length > 1 ? "meant" : "other";
}

/** The survey a Markdown file holds; undefined when it is neither one nor was meant to be one. */
export function readSurvey(file: SourceFile): Survey | undefined {
  const matter = frontMatterOf(file.text);
  if (!matter || surveyKind(file.text) === "other") return undefined;
  const placed = withLike(readYaml(file.text, matter.from, matter.to), LIKE_IN_SURVEY);
  const { values, mistakes, implausible, unsure } = readData("survey", placed);
  // A survey that cannot be read is known by its name all the same: the builds that name it wait for it.
  const told = /^survey[ \t]*:[ \t]*["']?([a-z0-9-]+)["']?[ \t]*(?:#|\r?$)/mu.exec(file.text)?.[1];
  const name = textOf(placed.data, "survey") ?? (placed.data === null ? told : undefined) ?? "";
  return {
    ...{ name, title: textOf(placed.data, "title") ?? name, file: file.path, placed },
    ...{ values, mistakes, implausible, unsure },
  };
}

/** A survey as it was most likely meant, for telling what waits for its mistakes. */
export function surveyAsMeant(survey: Survey, { path, text }: SourceFile): Survey {
  const meant = asMeant(text, (each) => readSurvey({ path, text: each })?.mistakes ?? []);
  return readSurvey({ path, text: meant }) ?? survey;
}

/** The same survey with another value at a path, for telling what would come of it. */
export function surveyWith(survey: Survey, path: string, value: Data): Survey {
  const placed = { ...survey.placed, data: withAt(survey.placed.data, path, value) };
  const { values, mistakes, implausible, unsure } = readData("survey", placed);
  return { ...survey, placed, values, mistakes, implausible, unsure };
}

const readings = new WeakMap<SourceFile, { readonly survey: Survey | undefined }>();

function surveyIn(file: SourceFile): Survey | undefined {
  const found = readings.get(file) ?? { survey: readSurvey(file) };
  readings.set(file, found);
  return found.survey;
}

/** Reads surveys; a venue that is surveyed in two files is a mistake of the later one. */
function readAll(files: readonly SourceFile[]): Surveys {
  const byName = new Map<string, Survey>();
  const mistakes = new Map<string, readonly Mistake[]>();
  for (const file of files) {
    const survey = surveyIn(file);
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
    else if (NAME.test(survey.name)) byName.set(survey.name, survey);
    if (found.length > 0) mistakes.set(file.path, found);
  }
  return { byName, mistakes };
}

/**
 * Whether a file may hold the survey of that name. A name is letters in one piece, so that it stands in the text as it
 * is, unless the YAML writes one of them as an escape.
 */
const mayBeOf = ({ text }: SourceFile, name: string): boolean =>
  text.includes("\\") || new RegExp(`(?<![a-z0-9-])${name}(?![a-z0-9-])`, "u").test(text);

/** Surveys by the name of their venue. Who asks for one has it read and no other: a house has surveyed many halls. */
class SurveysByName implements ReadonlyMap<string, Survey> {
  readonly #files: readonly SourceFile[];
  readonly #all: () => ReadonlyMap<string, Survey>;
  readonly #asked = new Map<string, Survey | undefined>();

  constructor(files: readonly SourceFile[], all: () => ReadonlyMap<string, Survey>) {
    this.#files = files;
    this.#all = all;
  }

  get(name: string): Survey | undefined {
    if (!NAME.test(name)) return undefined;
    if (!this.#asked.has(name)) {
      const files = this.#files.filter((file) => mayBeOf(file, name));
      this.#asked.set(name, readAll(files).byName.get(name));
    }
    return this.#asked.get(name);
  }

  has(name: string): boolean {
    return this.get(name) !== undefined;
  }

  get size(): number {
    return this.#all().size;
  }

  forEach(callback: (survey: Survey, name: string, map: ReadonlyMap<string, Survey>) => void): void {
    for (const [name, survey] of this.#all()) callback(survey, name, this);
  }

  entries(): MapIterator<[string, Survey]> {
    return this.#all().entries();
  }

  keys(): MapIterator<string> {
    return this.#all().keys();
  }

  values(): MapIterator<Survey> {
    return this.#all().values();
  }

  [Symbol.iterator](): MapIterator<[string, Survey]> {
    return this.#all().entries();
  }
}

/** The surveys of a repository, each read when it is asked for. */
export function readSurveys(files: readonly SourceFile[]): Surveys {
  let read: Surveys | undefined;
  const all = (): Surveys => {
    read ??= readAll(files);
    return read;
  };
  return {
    byName: new SurveysByName(files, () => all().byName),
    get mistakes() {
      return all().mistakes;
    },
  };
}

/** What stands at a path of a survey. */
export function surveyData({ placed }: Survey, ...steps: readonly string[]): Data | undefined {
  let here: Data | undefined = placed.data;
  for (const step of steps) here = isGroup(here) && Object.hasOwn(here, step) ? here[step] : undefined;
  return here ?? undefined;
}

/** Names under a key of a survey. */
export function surveyNames(survey: Survey, ...steps: readonly string[]): readonly string[] {
  const data = surveyData(survey, ...steps);
  return isGroup(data) ? Object.keys(data) : [];
}

/** Who surveyed it and when, in words: `the survey of 2026-10-02 by R. Tallow`. */
export function surveyWords(survey: Survey): string {
  const [on, by] = ["on", "by"].map((key) => written(surveyData(survey, "surveyed", key)));
  return `the survey${on === undefined ? "" : ` of ${on}`}${by === undefined ? "" : ` by ${by}`}`;
}

/** The line at which something stands in a survey, or what it is in. */
export function surveyLine({ placed }: Survey, path: string): number {
  for (let here = path; here !== ""; here = here.includes(".") ? here.slice(0, here.lastIndexOf(".")) : "") {
    const found = placed.keys.get(here) ?? placed.places.get(here);
    if (found) return found.line;
  }
  return 1;
}
