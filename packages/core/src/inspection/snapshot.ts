import { isSameFrontMatter } from "../document/yaml/front-matter.js";
import type { ValueChange } from "../document/yaml/overlay.js";
import type { Build } from "../model/build.js";
import type { Ledger } from "../model/shared/ledger.js";
import { type Promised, promisedOf } from "../model/stock/bookings.js";
import { type DocumentFile, type Outline, type RepositoryFiles, stockFiles } from "../repository/files.js";
import type { HouseStandardSettings } from "../repository/house-standard.js";
import {
  isOutlinedAlike,
  outlineIn,
  outlineOf,
  type ReadDocument,
  readDocument,
  withChanges,
  withFacesAlike,
  withText,
} from "../repository/outline.js";
import { type Catalogue, readCatalogue } from "../repository/parts.js";
import { readStock, type Stock } from "../repository/stock.js";
import type { Standards } from "../standard/chain.js";
import { openStandards } from "../standard/use.js";
import { readSurveys, type Survey, type Surveys } from "../venue/survey.js";
import { type DocumentModel, modelOf, rewrittenModel, withBody } from "./document-model.js";
import type { Rule } from "./judging/rule.js";
import type { OpenOptions } from "./open-options.js";
import { type Prepared, prepare } from "./prepare.js";
import { ledgerOf, usesIn } from "./together/uses.js";
import { samePromises } from "./trace.js";

/** Paths of every file that is read: what a link may lead to. */
export const pathsOf = ({
  documents,
  others,
  parts,
  stock,
  moreStock,
  surveys,
  houseStandard,
  folderStandards,
}: RepositoryFiles): readonly string[] =>
  [
    stock,
    ...(moreStock ?? []),
    houseStandard,
    ...documents,
    ...(others ?? []),
    ...parts,
    ...(surveys ?? []),
    ...(folderStandards ?? []),
  ].flatMap((file) => (file ? [file.path] : []));

const outlines = new WeakMap<DocumentFile, Outline>();

/** What the others have to know of a document; read from its text where it does not go with it, once. */
export function knownOutline(file: DocumentFile): Outline {
  const found = file.outline ?? outlines.get(file) ?? outlineOf(file);
  outlines.set(file, found);
  return found;
}

/** Whether the files of two states are the same but for the bodies of documents. */
function isSameButBodies(is: RepositoryFiles, was: RepositoryFiles): boolean {
  const { documents: own, ...rest } = is;
  const { documents: others, ...before } = was;
  const keys = new Set([...Object.keys(rest), ...Object.keys(before)]) as Set<keyof typeof rest>;
  return (
    [...keys].every((key) => rest[key] === before[key]) &&
    own.length === others.length &&
    own.every((file, index) => {
      const other = others[index] as DocumentFile;
      return file === other || (file.path === other.path && isSameFrontMatter(file.text, other.text));
    })
  );
}

/** The path of the one document in which two states differ; undefined where anything else is another, too. */
function onlyChanged(is: RepositoryFiles, was: RepositoryFiles): string | undefined {
  const [changed, ...others] = is.documents.flatMap((file, at) => (file === was.documents[at] ? [] : [at]));
  const keys = new Set([...Object.keys(is), ...Object.keys(was)]) as Set<keyof RepositoryFiles>;
  keys.delete("documents");
  const same = is.documents.length === was.documents.length && [...keys].every((key) => is[key] === was[key]);
  if (!same || changed === undefined || others.length > 0) return undefined;
  const { path } = is.documents[changed] as DocumentFile;
  return path === was.documents[changed]?.path ? path : undefined;
}

/** What all documents have to know of one another. */
interface Shared {
  readonly outlines: readonly Outline[];
  /** Files by the name they give their build. */
  readonly names: ReadonlyMap<string, readonly string[]>;
  readonly promises: readonly Promised[];
}

const sameOutline = (one: Outline, other: Outline | undefined): boolean =>
  one === other ||
  (one.path === other?.path &&
    one.name === other.name &&
    JSON.stringify([one.venue, one.stay, one.draft]) === JSON.stringify([other.venue, other.stay, other.draft]) &&
    samePromises(one.promises, other.promises));

function sharedOf(outlines: readonly Outline[], before: Shared | undefined): Shared {
  const same =
    before?.outlines.length === outlines.length &&
    outlines.every((each, index) => sameOutline(each, before.outlines[index]));
  if (before && same) return before;
  const sorted = [...outlines].sort((one, other) => (one.path < other.path ? -1 : 1));
  const names = new Map<string, string[]>();
  for (const { name, path } of sorted) if (name !== undefined) names.set(name, [...(names.get(name) ?? []), path]);
  return { outlines, names, promises: sorted.flatMap(({ promises }) => promises) };
}

/** A document as it is laid over: its front matter read, and what others have to know of it. */
interface LaidOver {
  readonly read: ReadDocument;
  readonly outline: Outline;
}

function laid(read: ReadDocument): LaidOver {
  let outline: Outline | undefined;
  return {
    read,
    // Most of what is laid over is looked at by itself.
    get outline() {
      outline ??= outlineIn(read.file.path, read.placed && withFacesAlike(read.placed));
      return outline;
    },
  };
}

interface KeptModel {
  readonly read: ReadDocument;
  readonly model: DocumentModel;
}

/** A document that alone is another than in an earlier state. */
interface Rewritten {
  readonly path: string;
  readonly before: Snapshot;
  /** The last model that was made of it. */
  readonly model: KeptModel | undefined;
}

type Rules = { readonly rules: readonly Rule[]; readonly options: OpenOptions };

/**
 * The state of a repository at one moment: files, what is laid over them, and what follows from both, read when it is
 * asked for. It is never changed; the next one takes over from it what is the same.
 */
export class Snapshot {
  /** What is read anew is compared with what was read before: what says the same stays the same object. */
  #earlier: { readonly catalogue?: Catalogue | undefined; readonly shared?: Shared | undefined } = {};
  #standards: Standards | undefined;
  #catalogue: Catalogue | undefined;
  #stock: Stock | undefined;
  #surveys: Surveys | undefined;
  #shared: Shared | undefined;
  #ledger: Ledger | undefined;
  /** Whose ledger counts here, too: what others use is the same. */
  #alike: Snapshot | undefined;
  #paths: readonly string[] | undefined;
  #prepared: Prepared | undefined;
  #documents: ReadonlyMap<string, DocumentFile> | undefined;
  /** Documents as they were read last, if models are kept: from there they are read on. */
  #reads = new Map<string, ReadDocument>();
  /** Models by which documents are judged, if they are kept, each with what it was made of. */
  #models = new Map<string, KeptModel>();
  /** The one document that is another than in an earlier state, which else is the same: while one writes it. */
  #rewritten: Rewritten | undefined;

  private constructor(
    readonly files: RepositoryFiles,
    readonly asked: Rules,
    private readonly overlays: ReadonlyMap<string, LaidOver>,
    before?: Snapshot,
  ) {
    if (before) this.#take(before);
  }

  static of(files: RepositoryFiles, asked: Rules): Snapshot {
    return new Snapshot(files, asked, new Map());
  }

  /** Takes over what does not depend on what is different. */
  #take(before: Snapshot): void {
    const [is, was] = [this.files, before.files];
    this.#earlier = { catalogue: before.#catalogue, shared: before.#shared };
    if (is.documents === was.documents) this.#documents = before.#documents;
    if (is.stock === was.stock && is.moreStock === was.moreStock) this.#stock = before.#stock;
    if (is.surveys === was.surveys) this.#surveys = before.#surveys;
    if (is.parts === was.parts) this.#catalogue = before.#catalogue;
    if (is.houseStandard === was.houseStandard && is.folderStandards === was.folderStandards) {
      this.#standards = before.#standards;
      this.#prepared = before.#prepared;
    }
    if (is === was) this.#paths = before.#paths;
    this.#reads = before.#reads;
  }

  /** Takes over everything that does not come from the bodies of documents, which alone are others. */
  #takeAllButBodies(before: Snapshot): void {
    for (const file of this.files.documents) {
      const other = before.document(file.path);
      if (other !== file && !file.outline) outlines.set(file, withText(knownOutline(other), file));
    }
    this.#shared = before.#shared;
    this.#paths = before.paths;
    this.#models = before.#models;
    this.#rewritten = before.#rewritten;
    this.#alike = before.#alike ?? before;
  }

  /** What others have to know of a document is not read again where nothing of that was changed. */
  #takeOutline(path: string, before: Snapshot): void {
    const [was, is] = [before.document(path), this.document(path)];
    if (!is.outline && isOutlinedAlike(was.text, is.text)) outlines.set(is, withText(knownOutline(was), is));
  }

  /** Remembers the state before one document, and nothing else, was changed. */
  #rewrite(path: string, before: Snapshot): void {
    const earlier = before.#rewritten?.path === path ? before.#rewritten : undefined;
    this.#rewritten = {
      path,
      before: earlier?.before ?? before,
      model: before.#models.get(path) ?? earlier?.model,
    };
    // What it was changed from is nothing anybody asks of it any more, and goes back to the first edit there was.
    if (!earlier) before.#rewritten = undefined;
  }

  /** With other files; what was laid over a document whose file is replaced is gone with it. */
  withFiles(files: RepositoryFiles): Snapshot {
    const documents = new Map(files.documents.map((file) => [file.path, file]));
    const overlays = [...this.overlays].filter(([path]) => documents.get(path) === this.document(path));
    const sameStandards =
      files.houseStandard === this.files.houseStandard && files.folderStandards === this.files.folderStandards;
    // House standards that were accepted are no longer these ones.
    const { accepted: _, ...options } = this.asked.options;
    const asked = sameStandards ? this.asked : { ...this.asked, options };
    const next = new Snapshot(files, asked, new Map(overlays), this);
    if (overlays.length < this.overlays.size) return next;
    if (isSameButBodies(files, this.files)) next.#takeAllButBodies(this);
    else {
      const path = this.overlays.size === 0 ? onlyChanged(files, this.files) : undefined;
      if (path !== undefined) next.#rewrite(path, this);
      if (path !== undefined) next.#takeOutline(path, this);
    }
    return next;
  }

  /** @throws RangeError when a change leads to nothing */
  withChanges(changes: readonly ValueChange[], read: (path: string) => ReadDocument): Snapshot {
    const overlays = new Map(this.overlays);
    for (const path of new Set(changes.map(({ document }) => document))) {
      const own = changes.filter(({ document }) => document === path);
      overlays.set(path, laid(withChanges(read(path), own as [ValueChange, ...ValueChange[]])));
    }
    return new Snapshot(this.files, this.asked, overlays, this);
  }

  /** With a document read anew from another text. */
  withDocument(read: ReadDocument): Snapshot {
    const { path } = read.file;
    const overlays = new Map(this.overlays).set(path, laid(read));
    const next = new Snapshot(this.files, this.asked, overlays, this);
    next.#alike = this.#alike ?? this;
    next.#rewritten = this.#rewritten;
    return next;
  }

  /** With another catalogue in place of the one that is read. */
  withCatalogue(catalogue: Catalogue): Snapshot {
    const next = new Snapshot(this.files, this.asked, this.overlays, this);
    next.#catalogue = catalogue;
    next.#alike = this.#alike ?? this;
    next.#rewritten = this.#rewritten;
    return next;
  }

  /** With other holdings in place of those that are read. */
  withStock(stock: Stock): Snapshot {
    const next = new Snapshot(this.files, this.asked, this.overlays, this);
    next.#stock = stock;
    return next;
  }

  /** With another survey of a venue in place of the one that is read. */
  withSurvey(survey: Survey): Snapshot {
    const next = new Snapshot(this.files, this.asked, this.overlays, this);
    next.#surveys = { ...this.surveys, byName: new Map(this.surveys.byName).set(survey.name, survey) };
    return next;
  }

  /** @throws RangeError when there is no such document */
  document(path: string): DocumentFile {
    this.#documents ??= new Map(this.files.documents.map((file) => [file.path, file]));
    const found = this.#documents.get(path);
    if (!found) throw new RangeError(`There is no build document ${path}.`);
    return found;
  }

  has(path: string): boolean {
    this.#documents ??= new Map(this.files.documents.map((file) => [file.path, file]));
    return this.#documents.has(path);
  }

  /** A document as it is read, with what is laid over it. @throws RangeError when there is no such document */
  read(path: string): ReadDocument {
    const laid = this.laidOver(path);
    if (laid) return laid;
    const file = this.document(path);
    const known = this.#reads.get(path);
    if (known?.file === file) return known;
    const read = readDocument(file, this.asked.options.prose, known);
    if (this.#keepsModels) this.#reads.set(path, read);
    return read;
  }

  get #keepsModels(): boolean {
    return this.asked.options.keep === "models";
  }

  /** The model a document is judged by. @throws RangeError when there is no such document */
  model(path: string): DocumentModel {
    const read = this.read(path);
    const known = this.#models.get(path);
    if (known?.read === read) return known.model;
    const rules = (): readonly string[] => this.prepared.ids;
    const { data = null } = read.placed ?? {};
    const isBodyNew = data !== null && known?.read.placed === read.placed;
    const isRefused = read.markdown.refused !== undefined || known?.read.markdown.refused !== undefined;
    const model =
      known && isBodyNew && !isRefused ? withBody(known.model, read, this, rules) : this.#modelOf(read, rules);
    if (this.#keepsModels) {
      this.#models.set(path, { read, model });
      // It has what still holds of the one before, which knows the state it was made in, and through it all before that.
      if (this.#rewritten?.path === path) this.#rewritten = { ...this.#rewritten, model: undefined };
    }
    return model;
  }

  /** A model that is made anew; where its document is being written, with what still holds of the one before. */
  #modelOf(read: ReadDocument, rules: () => readonly string[]): DocumentModel {
    const { path } = read.file;
    const earlier = this.#rewritten?.path === path && !this.laidOver(path) ? this.#rewritten.model : undefined;
    const both = earlier ? [earlier.read, read] : [];
    const canBeRead = both.every(({ placed, markdown }) => (placed?.data ?? null) !== null && !markdown.refused);
    if (earlier && canBeRead) return rewrittenModel(earlier.model, read, this, rules);
    return modelOf(read, this, rules, undefined, undefined, this.asked.options.written === true);
  }

  /** Lets go what is kept of a document. */
  release(path: string): void {
    this.#reads.delete(path);
    this.#models.delete(path);
  }

  /** The document as it is laid over; undefined when nothing is. */
  laidOver(path: string): ReadDocument | undefined {
    return this.overlays.get(path)?.read;
  }

  /** What a document is read from: the same object while nothing of it is different. */
  sourceOf(path: string): object {
    return this.laidOver(path) ?? this.document(path);
  }

  /** @throws StandardError when a house standard cannot be read */
  get standards(): Standards {
    this.#standards ??= openStandards(this.files);
    return this.#standards;
  }

  /** The house standard of the root; a document in a folder with its own is judged by both. */
  get standard(): HouseStandardSettings {
    return this.standards.root.settings;
  }

  get catalogue(): Catalogue {
    this.#catalogue ??= readCatalogue(this.files.parts, this.#earlier.catalogue);
    return this.#catalogue;
  }

  get stock(): Stock {
    this.#stock ??= readStock(stockFiles(this.files));
    return this.#stock;
  }

  /** Venues as they were surveyed. */
  get surveys(): Surveys {
    this.#surveys ??= readSurveys(this.files.surveys ?? []);
    return this.#surveys;
  }

  get #sharedNow(): Shared {
    this.#shared ??= sharedOf(
      [
        ...this.files.documents.map((file) => this.overlays.get(file.path)?.outline ?? knownOutline(file)),
        ...(this.files.others ?? []).map((each) => this.overlays.get(each.path)?.outline ?? each),
      ],
      this.#earlier.shared,
    );
    return this.#shared;
  }

  get names(): ReadonlyMap<string, readonly string[]> {
    return this.#sharedNow.names;
  }

  get promises(): readonly Promised[] {
    return this.#sharedNow.promises;
  }

  promisedOf(lot: string): readonly Promised[] {
    return promisedOf(this.promises, lot);
  }

  /** Who uses what when, of what several documents may use. */
  get ledger(): Ledger {
    if (this.#alike) return this.#alike.ledger;
    this.#ledger ??= this.#makeLedger();
    return this.#ledger;
  }

  /** The same as a document looks at it: what it uses itself counts for nothing there, and may be another than before. */
  ledgerFor(path: string): Ledger {
    return this.#rewritten?.path === path ? this.#rewritten.before.ledger : this.ledger;
  }

  #makeLedger(): Ledger {
    const { days } = this.stock;
    const { outlines: all } = this.#sharedNow;
    const byPath = new Map(all.map((each) => [each.path, each]));
    return ledgerOf(all, days, (path) => usesIn(byPath.get(path) as Outline, this));
  }

  /** The design of a document that is read, among everything this repository has. */
  designOf(read: ReadDocument): Build {
    const { path } = read.file;
    const isOurs = this.#keepsModels && this.has(path) && this.read(path) === read;
    return isOurs ? this.model(path).build : modelOf(read, this, () => []).build;
  }

  get paths(): readonly string[] {
    this.#paths ??= pathsOf(this.files);
    return this.#paths;
  }

  get today(): string {
    return this.asked.options.today;
  }

  /** Rules and house standards put together. @throws StandardError when they do not fit */
  get prepared(): Prepared {
    const { rules, options } = this.asked;
    this.#prepared ??= prepare(this, rules, options);
    return this.#prepared;
  }

  /** Everything that is compared with the next snapshot is read. @throws StandardError */
  settle(): this {
    void [this.catalogue, this.stock, this.surveys, this.#sharedNow, this.standards];
    this.#earlier = {};
    return this;
  }
}
