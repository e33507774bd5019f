import type { System } from "@plumbmark/calc";
import { isThere, targetOf } from "../document/body/links.js";
import { LIKE_IN_BUILD, withLike } from "../document/like.js";
import type { Mistake } from "../document/mistake.js";
import { START } from "../document/place.js";
import { readData } from "../document/read-data.js";
import { inWorld, type Unsure, type World } from "../document/unsure.js";
import type { Placed } from "../document/yaml/yaml.js";
import { Build } from "../model/build.js";
import { handOver, keepAcross } from "../model/reading/once.js";
import { Reader } from "../model/reading/reader.js";
import { LOOK, LOOKED_AT, note, noteAt, noting, Reads } from "../model/reading/reads.js";
import { systemOf } from "../model/reading/system.js";
import { withVenue } from "../model/reading/venue-reading.js";
import type { UseEntry } from "../model/shared/use.js";
import type { Promised } from "../model/stock/bookings.js";
import type { SourceFile } from "../repository/files.js";
import type { ReadDocument } from "../repository/outline.js";
import type { Rule } from "./judging/rule.js";
import type { CheckEntry, TurnsAtEntry } from "./record.js";
import type { Snapshot } from "./snapshot.js";
import { type Dependencies, Trace, TracedMap } from "./trace.js";
import { TracedContext } from "./traced-context.js";
import { Unchanged } from "./unchanged.js";

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
  /** What was found by it, kept while the document is written; undefined where nobody writes. */
  readonly kept?: KeptFindings;
}

/** What a rule found. */
interface KeptChecks {
  /** Whether all of its checks, or those that do not hold. */
  readonly every: boolean;
  readonly found: readonly CheckEntry[];
  /** What it looked at: while that is the same, it would find the same. */
  readonly reads: Reads;
}

/** What is kept of the judging of a document, each with what it rests on. */
export interface KeptFindings {
  readonly checks: Map<Rule, KeptChecks>;
  /** What it uses that others may use, too. */
  uses?: { readonly entries: readonly UseEntry[] | undefined; readonly reads: Reads };
  /** At which figure a check would come out otherwise; undefined where it was looked for and is not known. */
  readonly turns: Map<CheckEntry, TurnsAtEntry | undefined>;
  /** What all documents promised then. */
  readonly promises: readonly Promised[];
  /** Its models in other worlds than the one that is written, by what is otherwise there. */
  readonly worlds: Map<string, WorldModel>;
  /** Those of the model before, until the document is judged: each knows the state it was made in. */
  readonly earlierWorlds: Map<string, WorldModel>;
}

/** A document as a model in another world. */
interface WorldModel {
  readonly model: DocumentModel;
  /** The front matter it was made of. */
  readonly reader: Reader;
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
 * @param written whether the document is being written, so that what is found is kept with what it rests on
 */
export function modelOf(
  { file, placed = NOTHING, markdown, name = "" }: ReadDocument,
  snapshot: Snapshot,
  rules: () => readonly string[],
  trace: Trace = new Trace(),
  world?: World,
  written = false,
): DocumentModel {
  const surveys = new TracedMap(snapshot.surveys.byName, trace.surveys);
  const { placed: completed, venue } = withVenue(withLike(placed, LIKE_IN_BUILD), surveys);
  const { mistakes: all, implausible, unsure, ...own } = readData("build", completed, written);
  // What is wrong with a survey is told in the survey.
  const read = venue ? all.filter(({ path }) => !venue.states(path)) : all;
  const whole = venue ? { ...own, values: venue.withOrigins(own.values) } : own;
  const { data, values } = world ? inWorld(whole, world) : whole;
  const isEmpty = placed.data === null && placed.mistakes.length === 0;
  const refused = markdown.refused ? [markdown.refused] : [];
  const found = [...(isEmpty ? [empty(file)] : read), ...refused];
  const parts = new TracedMap(snapshot.catalogue.parts, trace.parts);
  const quantities = written ? new TracedMap(values, NOTED) : values;
  const reader = new Reader({ ...completed, data }, quantities, parts, implausible, venue, placed);
  const context = new TracedContext(snapshot, trace, file.path, rules, name, found);
  const making = (): Build => new Build(reader, markdown, context);
  const build = written ? noting(new Reads(), making) : making();
  if (written) keepAcross(build);
  const kept: Pick<DocumentModel, "kept"> = written ? { kept: newlyKept(snapshot) } : {};
  return { build, system: systemOf(reader, build.practice), mistakes: build.mistakes, name, unsure, trace, ...kept };
}

const newlyKept = ({ promises }: Snapshot): KeptFindings => ({
  checks: new Map(),
  turns: new Map(),
  promises,
  worlds: new Map(),
  earlierWorlds: new Map(),
});

/** Each look at a quantity is noted by its path. */
const NOTED = {
  add: (path: string): void => noteAt(LOOK.quantity, path),
  addEvery: (): void => note(LOOKED_AT.whole),
};

/** What was kept of an earlier model of a document and holds for a later one, in a repository that else is the same. */
function keptFrom(was: DocumentModel, is: DocumentModel): Pick<DocumentModel, "kept"> {
  if (!was.kept || !is.kept || was.system !== is.system) return {};
  const { promises } = is.kept;
  const unchanged = new Unchanged(was, is, was.kept.promises === promises);
  const checks = new Map([...was.kept.checks].filter(([, { reads }]) => unchanged.holds(reads)));
  handOver(was.build, is.build, (reads) => unchanged.holds(reads));
  const { uses } = was.kept;
  const turns = was.build.reader === is.build.reader ? was.kept.turns : new Map();
  const earlierWorlds = new Map(was.kept.worlds);
  const kept: KeptFindings = { checks, turns, promises, worlds: new Map(), earlierWorlds };
  return { kept: uses && unchanged.holds(uses.reads) ? { ...kept, uses } : kept };
}

/** The model of a document that was changed, in a repository that else is the same. */
export function rewrittenModel(
  was: DocumentModel,
  read: ReadDocument,
  snapshot: Snapshot,
  rules: () => readonly string[],
): DocumentModel {
  const model = modelOf(read, snapshot, rules, was.trace, undefined, was.kept !== undefined);
  return { ...model, ...keptFrom(was, model) };
}

const keyOf = ({ without, instead }: World): string => JSON.stringify([[...without], [...instead]]);

/**
 * A document as a model in another world; while it is written, with what still holds of the model of that world before.
 * @param snapshot the repository in that world
 */
export function modelInWorld(
  { build, trace, kept }: DocumentModel,
  read: ReadDocument,
  snapshot: Snapshot,
  world: World,
): DocumentModel {
  const rules = (): readonly string[] => build.context.rules;
  if (!kept) return modelOf(read, snapshot, rules, trace, world);
  const { reader } = build;
  const earlier = kept.worlds.get(keyOf(world)) ?? kept.earlierWorlds.get(keyOf(world));
  const model =
    earlier?.reader === reader
      ? withBody(earlier.model, read, snapshot, rules)
      : modelOf(read, snapshot, rules, trace, world, true);
  const whole = earlier && earlier.reader !== reader ? { ...model, ...keptFrom(earlier.model, model) } : model;
  kept.worlds.set(keyOf(world), { model: whole, reader });
  return whole;
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
  const is = { ...model, build: new Build(build.reader, markdown, context, build) };
  return { ...is, ...keptFrom(model, is) };
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
