import type { Mistake } from "../document/mistake.js";
import type { CheckEntry } from "../inspection/record.js";

/** A mistake that checks wait for: of the document itself, or of the file it is in. */
export interface Cause {
  readonly file?: string;
  readonly mistake: Mistake;
}

/** The same rule says the same of the same thing. */
const keyOf = ({ rule, at, says }: CheckEntry): string => `${rule}\u0000${at.path}\u0000${says}`;

const isUnder = (path: string, group: string): boolean => path === group || path.startsWith(`${group}.`);

const groupOf = (path: string): string => path.slice(0, Math.max(0, path.lastIndexOf(".")));

/** Whether something that is missing is missing for a mistake: at its place, in it, around it, or beside an unknown key. */
function isFor(missing: string, { path, unknownKey }: Mistake): boolean {
  if (path === "" || missing === "") return false;
  if (isUnder(missing, path) || isUnder(path, missing)) return true;
  return unknownKey === true && groupOf(path) === groupOf(missing);
}

/**
 * Tells of each check that does not hold whether it only follows from mistakes: it would hold, or would not be there, were
 * the document as it was meant, or all it waits for is what the mistakes left unread.
 * @param meant what the document comes to without its mistakes; undefined where nobody can tell what was meant
 * @param unread whether nothing of the document's data could be read at all
 */
export function withCauses(
  checks: readonly CheckEntry[],
  causes: readonly Cause[],
  { meant, unread }: { readonly meant: readonly CheckEntry[] | undefined; readonly unread: boolean },
): readonly CheckEntry[] {
  const [first] = causes;
  if (!first) return checks;
  const kept = meant && new Set(meant.filter(({ outcome }) => outcome !== "holds").map(keyOf));
  const own = new Set(causes.map(({ mistake }) => keyOf({ ...mistake, at: mistake } as unknown as CheckEntry)));
  // A mistake of the form follows from nothing; a name that is not found may follow from how it is written elsewhere.
  const isCause = (check: CheckEntry): boolean => check.rule === "document.front-matter" || own.has(keyOf(check));
  const causeOf = (check: CheckEntry): Cause | undefined => {
    const missing = check.missing ?? [];
    const near = causes.find(({ mistake }) => missing.some((each) => isFor(each, mistake)));
    if (kept && !kept.has(keyOf(check))) return near ?? first;
    const all = missing.length > 0 && missing.every((each) => causes.some(({ mistake }) => isFor(each, mistake)));
    if (check.outcome === "open" && all) return near;
    return unread ? first : undefined;
  };
  return checks.map((check) => {
    if (check.outcome === "holds" || isCause(check)) return check;
    const cause = causeOf(check);
    if (!cause) return check;
    const { file, mistake } = cause;
    return { ...check, "follows-from": { ...(file ? { file } : {}), path: mistake.path, line: mistake.place.line } };
  });
}
