import {
  type CheckEntry,
  type DocumentEntry,
  foundIn,
  type OpenRepository,
  type Place,
  whereFoundWords,
} from "@plumbmark/core";
import { filesOf } from "./files.js";
import { mentionsIn } from "./names/mentions.js";

/** Another place a finding is about. */
export interface Related {
  readonly path: string;
  readonly place: Place;
  readonly says: string;
}

/** What an editor shows at a place of a file. */
export interface Finding {
  readonly place: Place;
  readonly weight: "error" | "warning" | "information";
  readonly rule: string;
  readonly says: string;
  readonly related: readonly Related[];
  /** The check it is of; the first where several wait for one thing. */
  readonly check: CheckEntry;
}

const TOP: Place = { line: 1, column: 1, endLine: 1, endColumn: 1 };
const placeOf = ({ line, column, endLine, endColumn }: CheckEntry["at"]): Place => ({
  line,
  column,
  endLine,
  endColumn,
});

/** What is open counts for nothing in a draft. */
function weightOf({ level, outcome }: CheckEntry, isDraft: boolean): Finding["weight"] {
  if (outcome === "open" && isDraft) return "information";
  return level === "shall" ? "error" : level === "should" ? "warning" : "information";
}

const counted = (checks: readonly CheckEntry[]): string =>
  checks.length === 0 ? "" : checks.length === 1 ? "1 check waits for it." : `${checks.length} checks wait for it.`;

const sentences = (...parts: readonly (string | undefined)[]): string =>
  parts.filter((part) => part !== undefined && part !== "").join(" ");

const turnsOf = ({ "turns-at": turns }: CheckEntry): string | undefined =>
  turns === undefined
    ? undefined
    : turns.asks
      ? `It turns at ${turns.text}: ask the ${turns.asks}.`
      : `It holds with \`${turns.path}\` ${turns.sense} ${turns.text}.`;

/** Where a part, or a field of one, is written. */
function inParts(repository: OpenRepository, file: string, path: string): Place | undefined {
  const found = filesOf(repository).find((each) => each.path === file);
  if (!found) return undefined;
  const names = mentionsIn(repository, found.path, found.text, found.kind).filter(({ defines }) => defines);
  return names.find(({ name }) => path === name || path.startsWith(`${name}.`))?.place;
}

/** Files of the repository that a sentence names. */
function filesNamed(repository: OpenRepository, path: string, text: string): readonly Related[] {
  return filesOf(repository)
    .filter((file) => file.path !== path && text.includes(file.path))
    .map((file) => ({ path: file.path, place: TOP, says: "It is about this file, too." }));
}

/**
 * What does not hold in a file, causes first: mistakes, each with how many checks follow from it; what is not written
 * down; then the rest.
 * @param placeIn where something stands, or belongs, in the document
 */
export function findingsOf(
  repository: OpenRepository,
  entry: DocumentEntry,
  placeIn: (path: string) => Place | undefined,
): readonly Finding[] {
  const isDraft = entry.status === "draft";
  const found = foundIn(entry.checks.filter(({ outcome }) => outcome !== "waived"));
  const mistakes = found.mistakes.map(({ check, behind }) => ({
    place: placeOf(check.at),
    weight: "error" as const,
    rule: check.rule,
    says: sentences(check.says, check.mend, counted(behind)),
    related: filesNamed(repository, entry.file, check.says),
    check,
  }));
  const elsewhere = found.elsewhere.flatMap(({ file, line, behind }) => {
    const [check] = behind;
    if (!check) return [];
    const place = { line, column: 1, endLine: line, endColumn: 1 };
    const related = file === "" ? [] : [{ path: file, place, says: "The mistake is here." }];
    const where = file === "" ? `line ${line}` : `${file}, line ${line}`;
    const says = `${behind.length === 1 ? "1 check follows" : `${behind.length} checks follow`} from a mistake in ${where}.`;
    return [{ place: TOP, weight: "warning" as const, rule: check.rule, says, related, check }];
  });
  const gaps = [...found.gaps, ...found.guesses].flatMap(({ path, file, what, of, found: where, mend, waiting }) => {
    const [check] = waiting;
    if (!check) return [];
    const isGuess = check["rests-on-guesses"] !== undefined;
    const place = (file === undefined ? placeIn(path) : undefined) ?? placeOf(check.at);
    const named = [of, what].filter((each) => each !== undefined).join(": ");
    const says = isGuess
      ? sentences(`\`${path}\` is a guess.`, counted(waiting))
      : sentences(
          `\`${path}\` is not written down${named === "" ? "" : ` (${named})`}.`,
          counted(waiting),
          whereFoundWords(where) || mend,
        );
    const written = file === undefined ? undefined : inParts(repository, file, path);
    const related =
      written && file !== undefined ? [{ path: file, place: written, says: `\`${path}\` belongs here.` }] : [];
    const weights = waiting.map((each) => weightOf(each, isDraft));
    const weight =
      (["error", "warning", "information"] as const).find((each) => weights.includes(each)) ?? "information";
    return [{ place, weight, rule: check.rule, says, related, check }];
  });
  const rest = found.rest.map((check) => ({
    place: placeOf(check.at),
    weight: weightOf(check, isDraft),
    rule: check.rule,
    says: sentences(check.says, turnsOf(check), check.mend),
    related: filesNamed(repository, entry.file, `${check.says} ${check.mend ?? ""}`),
    check,
  }));
  return [...mistakes, ...elsewhere, ...gaps, ...rest];
}
