import { textAt } from "../document/edited.js";
import type { Mistake } from "../document/mistake.js";
import { readData } from "../document/read-data.js";
import { readWholeYaml } from "../document/yaml/whole-yaml.js";
import type { OpenRepository } from "../inspection/open-repository.js";
import type { CheckEntry, MendEntry } from "../inspection/record.js";
import { stockFiles } from "../repository/files.js";
import { readSurveys } from "../venue/survey.js";
import { isMendable } from "./mendable.js";
import { apart, type MadeMend, madeMend, withMends, withoutMistakes } from "./mended-text.js";

/** A file as it is mended. */
export interface MendedFile {
  readonly path: string;
  readonly was: string;
  readonly is: string;
  /** In the order they were made in; one that a later one took further stands for both. */
  readonly made: readonly MadeMend[];
}

/** An approval that ended by what was mended. */
export interface EndedApproval {
  readonly path: string;
  readonly by: string | undefined;
}

export interface MendedRepository {
  readonly files: readonly MendedFile[];
  readonly ended: readonly EndedApproval[];
}

/** A figure may rest on another that is put right first; nothing hangs together more deeply than this. */
const MOST_ROUNDS = 12;

/** An approval ends by every change: that is told, and keeps nothing from being mended. */
const APPROVAL = "document.sign-off";

const stands = ({ outcome }: CheckEntry): boolean => outcome === "fails" || outcome === "open";
const nameOf = ({ rule, at }: CheckEntry): string => `${rule} ${at.path}`;
const namesOf = (checks: readonly CheckEntry[]): ReadonlySet<string> =>
  new Set(checks.filter((check) => stands(check) && check.rule !== APPROVAL).map(nameOf));

/** Mends of a repository, file after file, each held against what it brings about. */
class Mending {
  readonly #was = new Map<string, string>();
  readonly #made = new Map<string, MadeMend[]>();
  readonly #refused = new Set<string>();

  constructor(private readonly repository: OpenRepository) {}

  #text(path: string): string {
    const { documents, parts, surveys = [] } = this.repository.files;
    const all = [...documents, ...parts, ...surveys, ...stockFiles(this.repository.files)];
    const file = all.find((each) => each.path === path);
    if (!file) throw new RangeError(`There is no file ${path}.`);
    return file.text;
  }

  /** What is there already is not read again. */
  #set(path: string, text: string): void {
    if (this.#text(path) !== text) this.repository.replace(path, text);
  }

  #put(path: string, text: string, made: readonly MadeMend[]): void {
    if (!this.#was.has(path)) this.#was.set(path, this.#text(path));
    this.#made.set(path, [...(this.#made.get(path) ?? []), ...made]);
    this.repository.replace(path, text);
  }

  /** Puts slips of the form right. */
  form(path: string, mistakesIn: (text: string) => readonly Mistake[]): boolean {
    const before = this.#text(path);
    const { text, made } = withoutMistakes(before, mistakesIn);
    this.#set(path, before);
    if (text === before) return false;
    this.#put(path, text, made);
    return true;
  }

  readonly #mistakesOf =
    (path: string) =>
    (text: string): readonly Mistake[] => {
      this.#set(path, text);
      return this.repository.model(path).mistakes;
    };

  document(path: string): boolean {
    let changed = this.form(path, this.#mistakesOf(path));
    for (let round = 0; round < MOST_ROUNDS; round += 1) {
      if (!this.#figures(path)) return changed;
      changed = true;
    }
    return changed;
  }

  /** Makes what the rules are sure of; all at once, or, where that brings about something new, one at a time. */
  #figures(path: string): boolean {
    const text = this.#text(path);
    const { checks } = this.repository.one(path).entry;
    const sure = apart(checks.filter(stands).flatMap((check) => this.#sureOf(path, text, check)));
    if (sure.length === 0) return false;
    if (this.#holds(path, text, sure, checks)) return true;
    return sure.map((each) => this.#holds(path, this.#text(path), [each], checks)).includes(true);
  }

  #sureOf(path: string, text: string, check: CheckEntry): readonly MendEntry[] {
    const { mends = [], rule } = check;
    // Slips of the form were looked at before.
    if (rule === "document.front-matter" || rule === "document.parts" || !isMendable(check)) return [];
    return mends.filter(
      (each) => each.sure && textAt(text, each.at) === each.was && !this.#refused.has(this.#mark(path, each)),
    );
  }

  readonly #mark = (path: string, { at, becomes }: MendEntry): string => `${path} ${at.line}:${at.column} ${becomes}`;

  #holds(path: string, text: string, mends: readonly MendEntry[], before: readonly CheckEntry[]): boolean {
    // One at a time, an earlier change may have moved what a later one is about.
    if (mends.some(({ at, was }) => textAt(text, at) !== was)) return false;
    const next = withMends(text, mends);
    this.repository.replace(path, next);
    const [known, now] = [namesOf(before), namesOf(this.repository.one(path).entry.checks)];
    if (next !== text && [...now].every((name) => known.has(name))) {
      this.repository.replace(path, text);
      this.#put(path, next, mends.map(madeMend));
      return true;
    }
    this.repository.replace(path, text);
    if (mends.length === 1) for (const each of mends) this.#refused.add(this.#mark(path, each));
    return false;
  }

  get files(): readonly MendedFile[] {
    return [...this.#was].flatMap(([path, was]) => {
      const is = this.#text(path);
      return is === was ? [] : [{ path, was, is, made: together(this.#made.get(path) ?? []) }];
    });
  }
}

/** One after another at one place is one change. */
function together(made: readonly MadeMend[]): readonly MadeMend[] {
  const kept: MadeMend[] = [];
  for (const each of made) {
    const before = kept.findIndex(({ line, becomes }) => line === each.line && becomes === each.was);
    if (before < 0) kept.push(each);
    else kept[before] = { ...each, was: (kept[before] as MadeMend).was };
  }
  return kept.filter(({ was, becomes }) => was !== becomes).sort((one, other) => one.line - other.line);
}

const approvedIn = (repository: OpenRepository): ReadonlyMap<string, string | undefined> =>
  new Map(
    repository.documents.flatMap((path) => {
      const { approval } = repository.model(path).build;
      return approval.state === "approved" ? [[path, approval.by?.name] as const] : [];
    }),
  );

/**
 * Puts right in files of a repository what has one answer, and keeps every other byte. The repository holds the mended
 * texts afterwards.
 * @param wants whether a file is to be mended
 * @throws StandardError when the house standards cannot be used
 */
export function mendRepository(repository: OpenRepository, wants: (path: string) => boolean): MendedRepository {
  const approved = approvedIn(repository);
  const mending = new Mending(repository);
  const { parts, surveys = [] } = repository.files;
  const read = (name: "parts" | "stock") => (text: string) => readData(name, readWholeYaml(text)).mistakes;
  for (const { path } of parts.filter((file) => wants(file.path))) mending.form(path, read("parts"));
  for (const { path } of stockFiles(repository.files).filter((file) => wants(file.path)))
    mending.form(path, read("stock"));
  const surveyed = (path: string) => (text: string) => readSurveys([{ path, text }]).mistakes.get(path) ?? [];
  for (const { path } of surveys.filter((file) => wants(file.path))) mending.form(path, surveyed(path));
  // What one document says of a lot or a name another may look at.
  for (let round = 0; round < MOST_ROUNDS; round += 1)
    if (
      !repository.documents
        .filter(wants)
        .map((path) => mending.document(path))
        .includes(true)
    )
      break;
  const now = approvedIn(repository);
  const ended = [...approved].filter(([path]) => !now.has(path)).map(([path, by]) => ({ path, by }));
  return { files: mending.files, ended };
}
