import type { Mistake } from "../document/mistake.js";
import { START } from "../document/place.js";
import { readData } from "../document/read-data.js";
import type { Placed } from "../document/yaml.js";
import { Build } from "../model/build.js";
import { Reader } from "../model/reading/reader.js";
import { Repository } from "../model/repository.js";
import type { ReadDocument } from "../repository/outline.js";
import { chainFor, mergedStandard } from "../standard/chain.js";
import type { InspectionContext } from "./context.js";

/** Reads a document and makes its build model. */
export function buildOf(
  opened: ReadDocument,
  context: InspectionContext,
): { readonly build: Build; readonly mistakes: readonly Mistake[] } {
  const placed: Placed = opened.placed ?? { data: null, places: new Map(), keys: new Map(), mistakes: [] };
  const { values, mistakes: read, implausible } = readData("build", placed);
  const mistakes = placed.data === null && placed.mistakes.length === 0 ? [empty(opened)] : read;
  const reader = new Reader(placed, values, context.catalogue.parts, implausible);
  const standards = chainFor(context.standards, opened.file.path);
  const sameName = context.names.get(opened.name ?? "") ?? [];
  const build = new Build(reader, opened.markdown, {
    file: opened.file.path,
    standard: mergedStandard(standards),
    standards,
    stock: context.stock,
    files: context.files,
    sameName,
    today: context.today,
    promises: context.promises,
    rules: context.rules ?? [],
    findings: new Map(),
    mistakes: [...mistakes, ...(opened.markdown.refused ? [opened.markdown.refused] : [])],
  });
  return { build, mistakes: build.mistakes };
}

function empty({ file: { text } }: ReadDocument): Mistake {
  const of = (says: string, mend: string): Mistake => ({
    rule: "document.front-matter",
    path: "",
    place: START,
    says,
    mend,
  });
  if (text.trim() === "")
    return of("The file is empty.", "Begin it with a line `---`, keys such as `build:`, and a line `---`.");
  if (/^\uFEFF?---[ \t]*[\r\n]/u.test(text) && !/[\r\n]---[ \t]*(?:[\r\n]|$)/u.test(text.slice(4)))
    return of(
      "The front matter begins with the line `---` here, and no line `---` ends it.",
      "Write a line `---` below its last key.",
    );
  return of(
    "The file has no front matter that can be read.",
    "Begin the file with a line `---`, the front matter with the key `build`, and a line `---`.",
  );
}

/** What surrounds the documents, and the models made of them so far: each document is read into one model. */
export interface Models extends InspectionContext {
  readonly repository: Repository;
  readonly made: Map<ReadDocument, ReturnType<typeof buildOf>>;
}

/** The model of one document, made once. */
export function modelOf(opened: ReadDocument, models: Models): ReturnType<typeof buildOf> {
  const made = models.made.get(opened) ?? buildOf(opened, models);
  models.made.set(opened, made);
  return made;
}

/**
 * Makes the models of a repository's documents as they are asked for.
 * @param whole gives all documents, for whoever looks at more than one
 */
export function modelsOf(
  context: InspectionContext,
  whole: () => readonly ReadDocument[],
  rules: readonly string[],
): Models {
  const made: Models["made"] = new Map();
  const repository = new Repository(context, () => whole().map((each) => modelOf(each, models).build));
  const models: Models = { ...context, rules, made, repository };
  return models;
}
