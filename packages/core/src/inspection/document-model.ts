import type { System } from "@plumbmark/calc";
import { isThere, targetOf } from "../document/body/links.js";
import { LIKE_IN_BUILD, withLike } from "../document/like.js";
import type { Mistake } from "../document/mistake.js";
import { START } from "../document/place.js";
import { readData } from "../document/read-data.js";
import { inWorld, type Unsure, type World } from "../document/unsure.js";
import type { Placed } from "../document/yaml/yaml.js";
import { Build } from "../model/build.js";
import { Reader } from "../model/reading/reader.js";
import { systemOf } from "../model/reading/system.js";
import { withVenue } from "../model/reading/venue-reading.js";
import type { SourceFile } from "../repository/files.js";
import type { ReadDocument } from "../repository/outline.js";
import type { Rule } from "./judging/rule.js";
import type { CheckEntry, TurnsAtEntry } from "./record.js";
import type { Snapshot } from "./snapshot.js";
import { type Dependencies, Trace, TracedMap } from "./trace.js";
import { TracedContext } from "./traced-context.js";

/** A document as a model, not judged. */
export interface DocumentModel {
  readonly build: Build;
  /** System of units its author writes in. */
  readonly system: System;
  /** The author's mistakes that were found when it was made. */
  readonly mistakes: readonly Mistake[];
  /** The name it gives its build; empty without one. */
  readonly name: string;
  /** Guesses and bounds in it. */
  readonly unsure: readonly Unsure[];
  /** What has been looked at so far. */
  readonly trace: Trace;
  /** What was found by it that rests on the front matter alone. */
  readonly kept: KeptFindings;
}

/** What holds for a front matter whatever its body says. */
interface KeptFindings {
  /** Checks of the rules that looked at nothing else, and whether all of them or those that do not hold. */
  readonly checks: Map<Rule, { readonly every: boolean; readonly found: readonly CheckEntry[] }>;
  /** At which figure a check would come out otherwise; undefined where it was looked for and is not known. */
  readonly turns: Map<CheckEntry, TurnsAtEntry | undefined>;
}

const NOTHING: Placed = { data: null, places: new Map(), keys: new Map(), mistakes: [] };

function empty({ text }: SourceFile): Mistake {
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
  const first = /^\uFEFF?([^\r\n]*)/u.exec(text)?.[1]?.trim() ?? "";
  if (/^[\uFEFF\s]*[\r\n]---[ \t]*[\r\n]/u.test(text))
    return of("An empty line stands before the line `---`.", "Take it out: the file begins with `---`.");
  if (first !== "" && !/^[\w#]/u.test(first))
    return of(
      `The file begins with \`${first.slice(0, 40)}\`, and the front matter begins with a line of three hyphens.`,
      "Write `---` in the first line, and nothing before it.",
    );
  return of(
    "The file has no front matter that can be read.",
    "Begin the file with a line `---`, the front matter with the key `build`, and a line `---`.",
  );
}

/**
 * Makes the model of a document that is read.
 * @param rules ids of the rules in force; none when only values are computed
 * @param trace where it is noted what is looked at
 * @param world what is taken for written in place of guesses and bounds; as it is written when left out
 */
export function modelOf(
  { file, placed = NOTHING, markdown, name = "" }: ReadDocument,
  snapshot: Snapshot,
  rules: () => readonly string[],
  trace: Trace = new Trace(),
  world?: World,
): DocumentModel {
  const surveys = new TracedMap(snapshot.surveys.byName, trace.surveys);
  const { placed: completed, venue } = withVenue(withLike(placed, LIKE_IN_BUILD), surveys);
  const { mistakes: all, implausible, unsure, ...own } = readData("build", completed);
  // What is wrong with a survey is told in the survey.
  const read = venue ? all.filter(({ path }) => !venue.states(path)) : all;
  const whole = venue ? { ...own, values: venue.withOrigins(own.values) } : own;
  const { data, values } = world ? inWorld(whole, world) : whole;
  const isEmpty = placed.data === null && placed.mistakes.length === 0;
  const refused = markdown.refused ? [markdown.refused] : [];
  const found = [...(isEmpty ? [empty(file)] : read), ...refused];
  const parts = new TracedMap(snapshot.catalogue.parts, trace.parts);
  const reader = new Reader({ ...completed, data }, values, parts, implausible, venue, placed);
  const context = new TracedContext(snapshot, trace, file.path, rules, name, found);
  const build = new Build(reader, markdown, context);
  const kept = { checks: new Map(), turns: new Map() };
  return { build, system: systemOf(reader, build.practice), mistakes: build.mistakes, name, unsure, trace, kept };
}

/** The model of a document of which nothing but the body was changed, in a repository that else is the same. */
export function withBody(
  model: DocumentModel,
  { file, markdown, name = "" }: ReadDocument,
  snapshot: Snapshot,
  rules: () => readonly string[],
): DocumentModel {
  const { build, trace } = model;
  const context = new TracedContext(snapshot, trace, file.path, rules, name, build.context.mistakes);
  return { ...model, build: new Build(build.reader, markdown, context, build) };
}

/** Where the links of a document lead, and whether something is there. */
const linked = ({ context, links }: Build): Dependencies["paths"] =>
  Object.fromEntries(
    links
      .map(({ url }) => (url === "" || url.startsWith("#") ? undefined : targetOf(url, context.file)))
      .filter((target) => target !== undefined)
      .map((target) => [target, isThere(context.linkTargets, target)]),
  );

/** What the model and whatever was asked of it depend on. */
export const dependenciesOf = ({ build, trace }: DocumentModel): Dependencies => trace.dependencies(linked(build));
