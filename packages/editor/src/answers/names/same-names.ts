import type { OpenRepository } from "@plumbmark/core";
import { type CursorPoint, cursorAt } from "../cursor.js";
import { filesOf } from "../files.js";
import { isOlder, type OpenedFile } from "../opened.js";
import type { InSteps } from "../steps.js";
import { type FileKind, isIn, linesOf, zoneOf } from "../zone.js";
import { type Mention, mentionsIn, namesOf } from "./mentions.js";
import { type NameKind, nameAt } from "./names.js";

/** Everything of one kind that is written in the repository. */
export const definedIn = (repository: OpenRepository, kind: FileKind, of: NameKind): readonly Mention[] =>
  filesOf(repository)
    .filter((file) => file.kind === kind)
    .flatMap(({ path, text }) => mentionsIn(repository, path, text, kind))
    .filter((each) => each.of === of && each.defines);

/** A name as it was in the last text that could be read: where it stands now is known, and what it is of. */
function olderMention({ repository, path, text, kind, model }: OpenedFile, point: CursorPoint): Mention | undefined {
  const lines = linesOf(text);
  const zone = zoneOf(lines, kind);
  const cursor = model && isIn(zone, point.line) ? cursorAt(text, zone, point) : undefined;
  if (!model || !cursor || cursor.word === "") return undefined;
  const { path: steps, at, word, place } = cursor;
  const named = nameAt(kind, at, at === "key" ? [...steps, word] : steps);
  const then = mentionsIn(repository, path, model.text, kind).find(({ of, name }) => of === named?.of && name === word);
  return then && { ...then, place, defines: false };
}

/** The name at a point of a file; while its text is broken, one that stood in the last that could be read. */
export const namedAt = (file: OpenedFile, point: CursorPoint): Mention | undefined =>
  mentionAt(file.repository, file, point) ?? (isOlder(file) ? olderMention(file, point) : undefined);

/** Wherever something of a kind is called so, file by file. */
function* called(repository: OpenRepository, of: NameKind, name: string): InSteps<readonly Mention[]> {
  const found: Mention[] = [];
  for (const file of filesOf(repository)) {
    yield;
    const { path, text, kind } = file;
    // What is called so has the name in its text as it is: other spellings of YAML are
    // no mention. Places alone are spelt in several ways.
    if (of !== "place" && !text.includes(name)) continue;
    const all = mentionsIn(repository, path, text, kind);
    found.push(...all.filter((each) => each.of === of && each.name === name));
  }
  return found;
}

const isAt = ({ place }: Mention, line: number, column: number): boolean =>
  place.line === line && place.column <= column && column <= place.endColumn;

/** The name at a point of a file. */
export const mentionAt = (
  repository: OpenRepository,
  file: { readonly path: string; readonly text: string; readonly kind: FileKind },
  { line, column }: { readonly line: number; readonly column: number },
): Mention | undefined =>
  mentionsIn(repository, file.path, file.text, file.kind).find((each) => isAt(each, line, column));

/** Everywhere the same thing is named; where it is written first. */
export function* sameNames(repository: OpenRepository, { of, name, scope }: Mention): InSteps<readonly Mention[]> {
  const same = (yield* called(repository, of, name)).filter((each) => each.scope === scope);
  return [...same.filter(({ defines }) => defines), ...same.filter(({ defines }) => !defines)];
}

/** Names that may be given: letters, digits, hyphens and underscores; of parts points as well. */
const NAME: Readonly<Partial<Record<NameKind, RegExp>>> = {
  part: /^[A-Za-z0-9][A-Za-z0-9_.-]*$/u,
  rule: /^[a-z0-9-]+\.[a-z0-9-]+$/u,
  build: /^[a-z0-9][a-z0-9-]*$/u,
  venue: /^[a-z0-9][a-z0-9-]*$/u,
};
const USUAL_NAME = /^[A-Za-z0-9][A-Za-z0-9_-]*$/u;

/**
 * Why a name cannot be renamed so; undefined where it can.
 * @param all everywhere it is named
 */
export function* refusalOf(
  repository: OpenRepository,
  { of, name, scope }: Mention,
  all: readonly Mention[],
  to: string,
): InSteps<string | undefined> {
  if (!all.some(({ defines }) => defines))
    return `\`${name}\` is not written in this repository, so it cannot be renamed here.`;
  if (!(NAME[of] ?? USUAL_NAME).test(to))
    return `\`${to.slice(0, 60)}\` cannot be a name here: write letters, digits and hyphens.`;
  const others = yield* called(repository, of, to);
  const unread = filesOf(repository).find(
    (file) => file.text.includes(name) && !namesOf(repository, file.path, file.text, file.kind).isRead,
  );
  if (unread) return `${unread.path} cannot be read as it is, and may name \`${name}\`: put it right first.`;
  const taken = others.some((each) => each.scope === scope && each.defines);
  return taken ? `There is a ${of} \`${to}\` already.` : undefined;
}
