import {
  type DocumentEntry,
  type OpenRepository,
  openRepository,
  pluginRules,
  type RepositoryFiles,
  type Rule,
  StandardError,
} from "@plumbmark/core";
import {
  type Finding,
  filesOf,
  findingsOf,
  kindOfText,
  mistakesInWish,
  type OpenedFile,
  type SoundModel,
} from "../answers/index.js";
import type { Host, RepositoryOnDisk } from "./host.js";

/** What is wrong with a house standard, while the last one that could be used goes on to be used. */
export interface StandardProblem {
  readonly path: string;
  readonly line: number;
  readonly column: number;
  readonly says: string;
}

const PLUGIN_FAILED = "plugin.failed";

/** A docs repository that is held in memory, its open files as they are in the editor. */
export class Session {
  readonly root: string;
  readonly #host: Host;
  #disk: RepositoryOnDisk;
  #repository: OpenRepository;
  /** What plugins came to; undefined until they have been asked for the first time. */
  #ofPlugins: readonly Rule[] | undefined;
  readonly #sound = new Map<string, SoundModel>();
  readonly #judged = new Map<string, DocumentEntry>();
  /** Entries with the figures at which their findings turn, by the path; each with the entry it is of. */
  readonly #turned = new Map<string, { readonly of: DocumentEntry; readonly entry: DocumentEntry }>();
  /** Files that are open in the editor, by their path from the root. */
  readonly #texts = new Map<string, string>();
  problem: StandardProblem | undefined;

  constructor(disk: RepositoryOnDisk, host: Host) {
    this.root = disk.root;
    this.#host = host;
    this.#disk = disk;
    this.#repository = this.#open(disk.files);
  }

  get repository(): OpenRepository {
    return this.#repository;
  }

  /** Pages of the site it was published to. */
  get pages(): ReadonlySet<string> {
    return this.#disk.pages ?? new Set();
  }

  get hasPlugins(): boolean {
    return this.#disk.plugins.length > 0;
  }

  #open(files: RepositoryFiles): OpenRepository {
    // What the rules of plugins would be called is not known before they have been asked.
    const waiting = this.hasPlugins ? pluginRules({ rules: [], failed: [], refused: this.#disk.plugins }) : [];
    const rules = [...this.#disk.rules, ...(this.#ofPlugins ?? waiting)];
    return openRepository(files, rules, { today: this.#host.today(), keep: "models", written: true });
  }

  /** Opens other files; where their house standard cannot be used, with the one that could. */
  #reopen(files: RepositoryFiles): void {
    try {
      const next = this.#open(files);
      void next.rules;
      this.#repository = next;
      this.problem = undefined;
    } catch (error) {
      if (!(error instanceof StandardError)) throw error;
      this.problem = problemOf(error, files);
      const { houseStandard, folderStandards } = this.#repository.files;
      const { houseStandard: _, folderStandards: __, ...rest } = files;
      this.#repository = this.#open({
        ...rest,
        ...(houseStandard ? { houseStandard } : {}),
        ...(folderStandards ? { folderStandards } : {}),
      });
    }
  }

  /** Takes the text of a file as it is in the editor; without one, what lies on the disk counts again. */
  async put(path: string, text: string | undefined): Promise<void> {
    if (text === undefined) this.#texts.delete(path);
    else this.#texts.set(path, text);
    const now = text ?? (await this.#host.text(`${this.root}/${path}`));
    this.replace(path, now);
  }

  /** The same at once, for a text that is there. */
  replace(path: string, text: string | undefined): void {
    const known = filesOf(this.#repository).find((file) => file.path === path);
    if (known?.text === text) return;
    const role = known ? undefined : text === undefined ? undefined : this.#disk.roleOf(path, text);
    if (!known && role === undefined) return;
    if (text !== undefined && role === "parts" && kindOfText(path, text) === "wish") return;
    const isStandard = known?.kind === "house standard" || role === "house standard" || role === "folder standard";
    if (!isStandard) {
      this.#repository.replace(path, text, role);
      return;
    }
    // Replaced in a repository of its own first: a house standard that cannot be used leaves nothing to be told.
    const trial = this.#open(this.#repository.files);
    trial.replace(path, text, role);
    this.#reopen(trial.files);
  }

  /** Reads the disk again; open files stay as they are in the editor. */
  async refresh(): Promise<void> {
    this.#disk = await this.#host.open(this.root);
    this.#reopen(this.#disk.files);
    for (const [path, text] of this.#texts) this.replace(path, text);
  }

  /** Asks the plugins about the files as they are now. */
  async askPlugins(): Promise<void> {
    if (!this.hasPlugins) return;
    // Wishes are for the editor alone: a plugin that was given them would be asked anew after each of their letters.
    const { wishes: _, ...files } = this.#repository.files;
    const wanted = files.documents.map(({ path }) => path).filter((path) => this.#texts.has(path));
    const rules = await this.#host.pluginRules(this.root, files, wanted);
    this.#ofPlugins = rules;
    this.#reopen(this.#repository.files);
  }

  /** The entry of a file, and the model it was judged by where that could be read. @throws StandardError */
  #entryOf(path: string): DocumentEntry | undefined {
    const repository = this.#repository;
    if (!repository.documents.includes(path)) {
      const entries = repository.recordOf([]).documents;
      const counts = { checks: 0, holds: 0, fails: 0, open: 0, waived: 0 };
      return entries.find(({ file }) => file === path) ?? { file: path, verdict: "ready", counts, checks: [] };
    }
    const judged = repository.one(path);
    if (this.#judged.get(path) === judged.entry) return judged.entry;
    this.#judged.set(path, judged.entry);
    const { build, system } = judged;
    if (build.reader.placed.data !== null) this.#sound.set(path, { build, system, text: build.markdown.text });
    return judged.entry;
  }

  /** A wish is none of the repository's documents: what is wrong with it, as of one. */
  #wishEntry(path: string): DocumentEntry | undefined {
    const text = this.#texts.get(path);
    const isKnown = filesOf(this.#repository).some((file) => file.path === path && file.kind === "wish");
    if (text === undefined || !(isKnown || kindOfText(path, text) === "wish")) return undefined;
    const checks = mistakesInWish(this.#repository, path, text);
    const { length } = checks;
    const counts = { checks: length, holds: 0, fails: length, open: 0, waived: 0 };
    return { file: path, verdict: length === 0 ? "draft" : "not ready", counts, checks };
  }

  /** Works out at which figures the findings of a document turn; whether they were not known before. */
  turn(path: string): boolean {
    const of = this.#repository.documents.includes(path) ? this.#entryOf(path) : undefined;
    if (!of || this.#turned.get(path)?.of === of) return false;
    this.#turned.set(path, { of, entry: this.#repository.turned(path) });
    return true;
  }

  /** What is found in a file, causes first; at which figures it turns is told once that was worked out. */
  findings(path: string): readonly Finding[] {
    const found = this.#wishEntry(path) ?? this.#entryOf(path);
    if (!found) return [];
    const turned = this.#turned.get(path);
    const entry = turned?.of === found ? turned.entry : found;
    // What a plugin has not been asked yet arrives later.
    const waits = this.hasPlugins && this.#ofPlugins === undefined;
    const checks = waits ? entry.checks.filter(({ rule }) => rule !== PLUGIN_FAILED) : entry.checks;
    const model = this.#sound.get(path);
    return findingsOf(this.#repository, { ...entry, checks }, (at) => {
      if (!model || model.text !== this.textOf(path)) return undefined;
      return model.build.reader.place(at);
    });
  }

  textOf(path: string): string | undefined {
    return this.#texts.get(path) ?? filesOf(this.#repository).find((file) => file.path === path)?.text;
  }

  /** A file as the answers look at it; undefined where it is none of the repository. */
  file(path: string): OpenedFile | undefined {
    const known = filesOf(this.#repository).find((file) => file.path === path);
    const text = this.#texts.get(path) ?? known?.text;
    if (text === undefined) return undefined;
    if (known?.kind === "build") this.#entryOf(path);
    return {
      repository: this.#repository,
      path,
      kind: known?.kind ?? kindOfText(path, text),
      text,
      model: this.#sound.get(path),
      pages: this.pages,
    };
  }
}

/** `house-standard.yaml:12:3: …`, or a sentence that begins with no place. */
function problemOf({ message }: StandardError, { houseStandard }: RepositoryFiles): StandardProblem {
  const [, path, line, column, says] = /^(.+?):(\d+)(?::(\d+))?:\s*([\s\S]*)$/u.exec(message) ?? [];
  if (path === undefined || says === undefined)
    return { path: houseStandard?.path ?? "house-standard.yaml", line: 1, column: 1, says: message };
  return { path, line: Number(line), column: Number(column ?? 1), says };
}
