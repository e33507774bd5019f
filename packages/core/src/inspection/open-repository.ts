import { printer, type System } from "@plumbmark/calc";
import type { ValueChange } from "../document/yaml/overlay.js";
import type { Build } from "../model/build.js";
import { LOOKED_AT, note } from "../model/reading/reads.js";
import { Repository } from "../model/repository.js";
import { Free, type FreeQuestion } from "../model/shared/free.js";
import type { SharedUse } from "../model/shared/use.js";
import { sharedVenue } from "../model/shared/venue.js";
import type { DocumentFile, RepositoryFiles } from "../repository/files.js";
import type { HouseStandardSettings } from "../repository/house-standard.js";
import { type ReadDocument, readDocument } from "../repository/outline.js";
import type { Catalogue } from "../repository/parts.js";
import { type FileRole, replaceFile } from "../repository/replace-file.js";
import type { Stock } from "../repository/stock.js";
import { chainFor, type Standards } from "../standard/chain.js";
import type { Surveys } from "../venue/survey.js";
import { type Kept, type KeptResult, SnapshotDifference } from "./difference.js";
import { type DocumentModel, dependenciesOf, modelOf } from "./document-model.js";
import { type Inspected, inspectDocument } from "./inspect-document.js";
import { frozen, frozenBuild } from "./judging/frozen.js";
import type { Rule } from "./judging/rule.js";
import { runRule, type Subject } from "./judging/run-rule.js";
import { StandardError } from "./judging/settings.js";
import type { OpenOptions } from "./open-options.js";
import type { CheckEntry, DocumentEntry, InspectionRecord } from "./record.js";
import { recordOf } from "./record-of.js";
import { Snapshot } from "./snapshot.js";
import { linesOfShortfall, type ShortLine } from "./together/shortfall.js";
import { usesIn } from "./together/uses.js";
import { type Dependencies, Trace } from "./trace.js";
import { tracedBuild } from "./traced-build.js";
import { TracedContents } from "./traced-context.js";

/** Result of one document: its entry of the record, what that depends on, and the model it was judged by. */
export interface InspectedDocument extends Inspected {
  readonly dependencies: Dependencies;
  /** Notes what is looked at in the model from now on, too. */
  readonly trace: Trace;
}

/** A docs repository that is open: what is in it, and the result of each document and of all. */
export interface OpenRepository {
  /** The files as they are now. */
  readonly files: RepositoryFiles;
  /** Paths of the documents, in the record's order. */
  readonly documents: readonly string[];
  /** The house standard of the root. @throws StandardError */
  readonly standard: HouseStandardSettings;
  /** Every house standard. @throws StandardError */
  readonly standards: Standards;
  /** Every rule that is asked, those without code of any house standard among them. @throws StandardError */
  readonly rules: readonly Rule[];
  readonly catalogue: Catalogue;
  readonly stock: Stock;
  /** Venues as they were surveyed. */
  readonly surveys: Surveys;
  /**
   * Result of one document: of the repository, by its path, or of a file whose outline is among the others of it; of
   * the latter nothing is kept. A model is made again when it was let go.
   * @throws StandardError when the house standards cannot be used
   * @throws RangeError when there is no such document
   */
  one(document: string | DocumentFile): InspectedDocument;
  /** The record of all documents. @throws StandardError when the house standards cannot be used */
  all(): InspectionRecord;
  /** The record of documents that were judged elsewhere, with what else belongs into it. @throws StandardError */
  recordOf(entries: readonly DocumentEntry[]): InspectionRecord;
  /** What a document uses that others may use, too: of the repository, or one whose outline is among the others. */
  uses(document: string | DocumentFile): readonly SharedUse[];
  /**
   * What is free on some days of circuits, outlets, points, structures, lots and items: over all documents that are no
   * drafts and have days on site. @example repository.free({ stay: { from: "2027-05-14", to: "2027-05-16" }, venue:
   * "marlow-quay-hall" }).item("cord-12-3", 10.668)
   */
  free(question: FreeQuestion): Free;
  /** What some of the documents need, together, that is not free on their days. @throws RangeError */
  shortfall(paths: readonly string[]): readonly ShortLine[];
  /** The model of a document, not judged. @throws RangeError when there is no such document */
  model(path: string): Pick<DocumentModel, "build" | "system" | "mistakes">;
  /**
   * The entry of a document with the figures at which its findings turn, where those are told later than the rest.
   * @throws StandardError when the house standards cannot be used
   * @throws RangeError when there is no such document
   */
  turned(path: string): DocumentEntry;
  /**
   * Runs one rule on a document, whether it is among the rules or not.
   * @param trace where it is noted what the rule looks at
   * @throws RangeError
   */
  run(rule: Rule, path: string, trace?: Trace): readonly CheckEntry[];
  /** Makes the models of all documents, for rules that look at all of them. */
  readAll(): void;
  /** Lets go what is kept of a document. */
  release(path: string): void;
  /**
   * Replaces a file, adds one or, without a text, takes one out. Only what depends on it is read and judged again, when
   * it is asked for.
   * @param role what a file is that was not there before
   * @throws RangeError when that is not said
   */
  replace(path: string, text: string | undefined, role?: FileRole): void;
  /**
   * A second repository with values laid over the front matter of documents; this one stays as it is, and both share
   * everything else. Places stay those of the text: what is new has the place of what it replaces or is put into.
   * @throws RangeError when a change leads to nothing
   */
  with(changes: readonly ValueChange[]): OpenRepository;
}

class Opened implements OpenRepository {
  #snapshot: Snapshot;
  /** Results, each of the state in which it was found; whether it still holds is told when somebody asks for it. */
  readonly #results = new Map<string, Kept>();
  readonly #inherited: (path: string) => Kept | undefined;
  /** What is different from earlier states. */
  #differences = new WeakMap<Snapshot, SnapshotDifference>();
  #models = new Map<string, DocumentModel>();
  #whole: Repository | undefined;
  #builds: readonly Build[] | undefined;
  #judgedBuilds: readonly Build[] | undefined;
  /** What was last laid over: drafts and what-ifs lay hundreds of changes over one document. */
  #base: ReadDocument | undefined;
  readonly #options: OpenOptions;
  readonly #tracedBuilds = new WeakMap<Build, Build>();
  /** That of the rule that runs: what one saw may be looked at by another later. */
  #running = new Trace();

  constructor(
    snapshot: Snapshot,
    options: OpenOptions,
    inherited: (path: string) => Kept | undefined = () => undefined,
  ) {
    this.#snapshot = snapshot;
    this.#options = options;
    this.#inherited = inherited;
    if (options.frozen) freeze(snapshot);
  }

  get files(): RepositoryFiles {
    return this.#snapshot.files;
  }

  get documents(): readonly string[] {
    return this.files.documents.map(({ path }) => path);
  }

  get standard(): HouseStandardSettings {
    return this.#snapshot.standard;
  }

  get standards(): Standards {
    return this.#snapshot.standards;
  }

  get rules(): readonly Rule[] {
    return this.#snapshot.prepared.all;
  }

  get catalogue(): Catalogue {
    return this.#snapshot.catalogue;
  }

  get stock(): Stock {
    return this.#snapshot.stock;
  }

  get surveys(): Surveys {
    return this.#snapshot.surveys;
  }

  one(document: string | DocumentFile): InspectedDocument {
    if (typeof document !== "string") return this.#judge(readDocument(document, this.#options.prose));
    const kept = this.#keptOf(document);
    if (kept) return this.#withModel(kept, document);
    const judged = this.#judge(this.#snapshot.read(document), true);
    const { entry, dependencies, name } = judged;
    if (this.#options.keep !== "nothing")
      this.#results.set(document, { result: { entry, dependencies, name }, state: this.#snapshot });
    return judged;
  }

  turned(path: string): DocumentEntry {
    const judged = this.one(path);
    return judged.turned ? { ...judged.entry, checks: judged.turned() } : judged.entry;
  }

  all(): InspectionRecord {
    return this.recordOf(this.documents.map((path) => this.#keptOf(path)?.entry ?? this.one(path).entry));
  }

  recordOf(entries: readonly DocumentEntry[]): InspectionRecord {
    void this.#snapshot.prepared;
    return recordOf(this.#snapshot, entries);
  }

  uses(document: string | DocumentFile): readonly SharedUse[] {
    const other = typeof document === "string" ? { path: document } : { path: document.path, text: document.text };
    return usesIn({ ...other, promises: [] }, this.#snapshot) ?? [];
  }

  free(question: FreeQuestion): Free {
    const { ledger, stock, promises } = this.#snapshot;
    return new Free({ ...question, sharedVenue: sharedVenue(question.venue) }, ledger, stock, promises);
  }

  shortfall(paths: readonly string[]): readonly ShortLine[] {
    const { stock, promises, ledger } = this.#snapshot;
    return linesOfShortfall({ stock, promises, ledger, designOf: (path) => this.model(path).build }, paths);
  }

  model(path: string): DocumentModel {
    const known = this.#models.get(path);
    if (known) return known;
    const model = modelOf(this.#snapshot.read(path), this.#snapshot, () => this.#options.known ?? []);
    if (this.#options.frozen) frozenBuild(model.build);
    if (this.#options.keep === "models") this.#models.set(path, model);
    return model;
  }

  run(rule: Rule, path: string, trace?: Trace): readonly CheckEntry[] {
    const model = this.model(path);
    this.#running = trace ?? model.trace;
    const shown = (build: Build): Build => (trace ? this.#traced(build) : build);
    const subject = this.#subject({ ...model, trace: this.#running }, true, () => this.#allBuilds().map(shown));
    return runRule(rule, { ...subject, shown: shown(model.build) });
  }

  #traced(build: Build): Build {
    const traced = this.#tracedBuilds.get(build) ?? tracedBuild(build, () => this.#running);
    this.#tracedBuilds.set(build, traced);
    return traced;
  }

  readAll(): void {
    void this.#allBuilds();
  }

  release(path: string): void {
    this.#results.delete(path);
    this.#models.delete(path);
    this.#snapshot.release(path);
  }

  replace(path: string, text: string | undefined, role?: FileRole): void {
    const files = replaceFile(this.files, path, text, role);
    if (files === this.files) return;
    const is = this.#snapshot.withFiles(files);
    try {
      is.settle();
    } catch {
      // Whoever asks next is told what is wrong with the house standard.
    }
    this.#snapshot = is;
    this.#differences = new WeakMap();
    this.#models = new Map();
    this.#whole = undefined;
    this.#builds = undefined;
    this.#judgedBuilds = undefined;
    if (this.#base && !is.has(this.#base.file.path)) this.#base = undefined;
    if (this.#options.frozen) freeze(is);
  }

  with(changes: readonly ValueChange[]): OpenRepository {
    const was = this.#snapshot;
    const is = was.withChanges(changes, (path) => this.#baseOf(path)).settle();
    return new Opened(is, this.#options, (path) => this.#results.get(path) ?? this.#inherited(path));
  }

  /** A result that was kept and still holds. */
  #keptOf(path: string): KeptResult | undefined {
    const kept = this.#results.get(path) ?? this.#inherited(path);
    if (!kept || kept.state === this.#snapshot) return kept?.result;
    const holds = this.#holds(path, kept);
    if (holds) this.#results.set(path, { result: kept.result, state: this.#snapshot });
    else this.#results.delete(path);
    return holds ? kept.result : undefined;
  }

  #holds(path: string, { result, state }: Kept): boolean {
    try {
      const difference = this.#differences.get(state) ?? new SnapshotDifference(state, this.#snapshot);
      this.#differences.set(state, difference);
      return !difference.affects(path, result);
    } catch (error) {
      // Whoever judges next is told what is wrong with the house standard.
      if (error instanceof StandardError) return false;
      throw error;
    }
  }

  /** A result that was kept, with a model that is made when it is asked for. */
  #withModel({ entry, dependencies }: KeptResult, path: string): InspectedDocument {
    let judged: InspectedDocument | undefined;
    const again = (): InspectedDocument => {
      judged ??= this.#judge(this.#snapshot.read(path), this.#options.written);
      return judged;
    };
    return {
      entry,
      dependencies,
      get build(): Build {
        return again().build;
      },
      get system(): System {
        return again().system;
      },
      get trace(): Trace {
        return again().trace;
      },
      ...(this.#options.written ? { turned: () => again().turned?.() ?? entry.checks } : {}),
    };
  }

  #judge(document: ReadDocument, isOurs = false): InspectedDocument & { readonly name: string } {
    const { rulesBelow } = this.#snapshot.prepared;
    const { ids } = this.#snapshot.prepared;
    const model = isOurs ? this.#toJudge(document.file.path) : modelOf(document, this.#snapshot, () => ids);
    const subject = this.#subject(model, this.#options.every ?? false, () => this.#allToJudge());
    const { turns = true } = this.#options;
    const asked = { document, snapshot: this.#snapshot, subject, rules: rulesBelow(subject.chain), turns };
    const inspected = inspectDocument(model, asked);
    return { ...inspected, dependencies: dependenciesOf(model), trace: model.trace, name: model.name };
  }

  /** The model a document is judged by: it knows which rules there are. */
  #toJudge(path: string): DocumentModel {
    const model = this.#snapshot.model(path);
    if (this.#options.frozen) frozenBuild(model.build);
    return model;
  }

  #allToJudge(): readonly Build[] {
    this.#judgedBuilds ??= this.documents.map((path) => this.#toJudge(path).build);
    return this.#judgedBuilds;
  }

  #subject({ build, system, trace }: DocumentModel, every: boolean, builds: () => readonly Build[]): Subject {
    const all = (): readonly Build[] => {
      note(LOOKED_AT.passing);
      trace.otherBuilds = true;
      return builds();
    };
    const whole = (): Repository => {
      note(LOOKED_AT.passing);
      trace.otherBuilds = true;
      this.#whole ??= new Repository(contentsOf(this.#snapshot), builds);
      return this.#whole;
    };
    const repository = new Repository(new TracedContents(this.#snapshot, trace), all);
    const chain = chainFor(this.standards, build.context.file);
    return { build, print: printer(system), chain, repository, whole, every };
  }

  #allBuilds(): readonly Build[] {
    this.#builds ??= this.documents.map((path) => this.model(path).build);
    return this.#builds;
  }

  #baseOf(path: string): ReadDocument {
    const laid = this.#snapshot.laidOver(path);
    if (laid) return laid;
    const file = this.#snapshot.document(path);
    if (this.#base?.file !== file) this.#base = readDocument(file, this.#options.prose);
    return this.#base;
  }
}

const contentsOf = (snapshot: Snapshot) => ({
  standard: snapshot.standard,
  parts: snapshot.catalogue.parts,
  lots: snapshot.stock.lots,
  surveys: snapshot.surveys.byName,
  files: snapshot.paths,
  today: snapshot.today,
});

/** What models are made of is the same for all of them. */
function freeze({ standards, catalogue, stock, surveys, names, promises, paths }: Snapshot): void {
  for (const each of [standards, catalogue, stock, surveys, names, promises, paths]) frozen(each);
}

/**
 * Opens a docs repository: the one way to inspect. Nothing here reads a disk; nothing but plain entries is kept unless
 * it is asked for, so that memory does not grow with the number of documents.
 * @throws StandardError when a house standard cannot be read
 */
export function openRepository(files: RepositoryFiles, rules: readonly Rule[], options: OpenOptions): OpenRepository {
  const snapshot = Snapshot.of(files, { rules, options });
  void snapshot.standards;
  return new Opened(snapshot, options);
}
