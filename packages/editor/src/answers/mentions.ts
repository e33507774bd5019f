import { type Data, type OpenRepository, type Place, readYaml, stockFiles, surveyKind } from "@plumbmark/core";
import { type NamedAt, type NameKind, nameAt } from "./names.js";
import type { InSteps } from "./steps.js";
import { isWish } from "./wishes.js";
import { type FileKind, linesOf, zoneOf } from "./zone.js";

/** A name where it stands in a file. */
export interface Mention {
  readonly of: NameKind;
  readonly name: string;
  /** What a name is unique in: the repository, a document, a venue, or a bar of one. */
  readonly scope: string;
  readonly path: string;
  readonly place: Place;
  readonly defines: boolean;
}

/** Names that are the same in the whole repository. */
const EVERYWHERE: readonly NameKind[] = ["build", "venue", "part", "lot", "connector", "section", "rule"];

interface Bare {
  readonly of: NameKind;
  readonly name: string;
  /** The bar a hang is of. */
  readonly bar?: string;
  readonly place: Place;
  readonly defines: boolean;
}

const within = (place: Place, from: number, length: number): Place => ({
  line: place.line,
  column: place.column + from,
  endLine: place.line,
  endColumn: place.column + from + length,
});

/** What stands between a name's steps and what they are, in the path of a value. */
const IN_PATHS: readonly (readonly [prefix: readonly string[], of: NameKind])[] = [
  [["faces"], "face"],
  [["viewing"], "face"],
  [["picture", "at"], "face"],
  [["power", "supplies"], "supply"],
  [["power", "circuits"], "circuit"],
  [["power", "runs"], "run"],
  [["data", "chains"], "chain"],
  [["stock"], "lot"],
  [["rigging", "bars"], "bar"],
];

/** Names in the path of a value, each with its offset in it. */
export function namesInPath(path: string): readonly (Omit<Bare, "place" | "defines"> & { readonly from: number })[] {
  const steps = path.split(".");
  const offset = (index: number): number => steps.slice(0, index).join(".").length + (index === 0 ? 0 : 1);
  for (const [prefix, of] of IN_PATHS) {
    const name = steps[prefix.length];
    if (name === undefined || name === "" || prefix.some((step, index) => steps[index] !== step)) continue;
    const found = [{ of, name, from: offset(prefix.length) }];
    const hang = steps[prefix.length + 2];
    if (of !== "bar" || steps[prefix.length + 1] !== "hangs" || hang === undefined) return found;
    return [...found, { of: "hang" as const, name: hang, bar: name, from: offset(prefix.length + 2) }];
  }
  const drawing =
    /^drawings\.(hang-plot|one-line|stand|sightlines|face)-(.+?)(?:-(?:power|data)-(?:audience|rear))?$/u.exec(path);
  if (!drawing) return [];
  const [, which, name] = drawing as unknown as [string, string, string];
  const of = which === "hang-plot" ? "bar" : which === "one-line" ? "circuit" : "face";
  return [{ of, name, from: `drawings.${which}-`.length }];
}

const isMapping = (data: Data): data is Readonly<Record<string, Data>> =>
  data !== null && typeof data === "object" && !Array.isArray(data);

/** A scalar's place without its quotes. */
function inner(lines: readonly string[], place: Place, text: string): Place | undefined {
  if (place.line !== place.endLine) return undefined;
  const raw = (lines[place.line - 1] ?? "").slice(place.column - 1, place.endColumn - 1);
  const from = raw === text ? 0 : raw.slice(1, -1) === text ? 1 : -1;
  return from < 0 ? undefined : within(place, from, text.length);
}

function ofNamed(
  { of, form, defines: written }: NamedAt,
  steps: readonly string[],
  text: string,
  place: Place,
): readonly Bare[] {
  const defines = written === true;
  if (form === "path")
    return namesInPath(text).map(({ from, ...name }) => ({
      ...name,
      place: within(place, from, name.name.length),
      defines: false,
    }));
  if (form === "cells") {
    const name = /^\s*([A-Za-z0-9][\w-]*)/u.exec(text)?.[1];
    return name === undefined
      ? []
      : [{ of, name, place: within(place, text.indexOf(name), name.length), defines: false }];
  }
  if (form === "point") {
    const [, bar, name = ""] = /^(?:(.+)\.)??([^.]+?)(?:\.(?:left|right))?$/u.exec(text) ?? [];
    const at = within(place, bar === undefined ? 0 : bar.length + 1, name.length);
    const hang = { of, name, ...(bar === undefined ? {} : { bar }), place: at, defines };
    return bar === undefined
      ? [hang]
      : [{ of: "bar", name: bar, place: within(place, 0, bar.length), defines: false }, hang];
  }
  const bar = of === "hang" ? steps[2] : undefined;
  return [{ of, name: text, ...(bar === undefined ? {} : { bar }), place, defines }];
}

function inYaml(
  text: string,
  kind: FileKind,
  lines: readonly string[],
): { readonly found: readonly Bare[]; readonly data: Data } {
  const zone = zoneOf(lines, kind);
  const starts = [0];
  for (const { index, 0: end } of text.matchAll(/\r\n|\n|\r/gu)) starts.push(index + end.length);
  const from = starts[zone.from - 1] ?? 0;
  const to = starts[zone.to - 1] ?? text.length;
  const placed = readYaml(text, from, Math.max(from, to));
  const found: Bare[] = [];
  const put = (named: NamedAt | undefined, steps: readonly string[], name: string, place: Place | undefined): void => {
    const at = named && place ? inner(lines, place, name) : undefined;
    if (named && at) found.push(...ofNamed(named, steps, name, at));
  };
  const walk = (data: Data, steps: readonly string[]): void => {
    const path = steps.join(".");
    if (typeof data === "string") put(nameAt(kind, "value", steps), steps, data, placed.places.get(path));
    else if (Array.isArray(data))
      for (const [index, item] of data.entries()) walk(item as Data, [...steps, String(index + 1)]);
    else if (isMapping(data))
      for (const [key, value] of Object.entries(data)) {
        const inside = [...steps, key];
        put(nameAt(kind, "key", inside), inside, key, placed.keys.get(inside.join(".")));
        walk(value, inside);
      }
  };
  walk(placed.data, []);
  return { found, data: placed.data };
}

const LINK = /\]\(calc:([^)\s]+)\)/gu;

function inProse(lines: readonly string[], from: number): readonly Bare[] {
  return lines.slice(from).flatMap((line, index) =>
    [...line.matchAll(LINK)].flatMap((match) => {
      const path = match[1] as string;
      const start = match.index + "](calc:".length;
      return namesInPath(path).map(({ from: offset, ...name }) => {
        const column = start + offset + 1;
        const number = from + index + 1;
        return {
          ...name,
          place: { line: number, column, endLine: number, endColumn: column + name.name.length },
          defines: false,
        };
      });
    }),
  );
}

/** The names of a venue's circuits and supplies. */
function statedBy(repository: OpenRepository, venue: string, of: NameKind): ReadonlySet<string> {
  for (const { path, text } of repository.files.surveys ?? []) {
    const defined = mentionsIn(repository, path, text, "survey").filter(({ defines }) => defines);
    if (defined.some((each) => each.of === "venue" && each.name === venue))
      return new Set(defined.filter((each) => each.of === of).map(({ name }) => name));
  }
  return new Set();
}

const known = new Map<string, readonly Mention[]>();
/** More files than a repository usually has open; what is beyond is read again. */
const MOST = 400;

function read(repository: OpenRepository, path: string, text: string, kind: FileKind): readonly Mention[] {
  const lines = linesOf(text);
  const { found, data } = inYaml(text, kind, lines);
  const isProse = kind === "build" || kind === "survey";
  const all = [...found, ...(isProse ? inProse(lines, zoneOf(lines, kind).to) : [])];
  const written = isMapping(data) ? data[kind === "survey" ? "survey" : "venue"] : undefined;
  const venue = typeof written === "string" ? written : undefined;
  // A point without its bar is that of the only bar which has one of that name.
  const barOf = new Map(all.filter(({ of, defines }) => of === "hang" && defines).map(({ name, bar }) => [name, bar]));
  const scopeOf = ({ of, name, bar }: Bare): string => {
    if (EVERYWHERE.includes(of)) return "";
    if (of === "hang") return `${path} ${bar ?? barOf.get(name) ?? ""}`;
    if (kind === "survey") return `venue ${venue}`;
    if ((of === "circuit" || of === "supply") && venue !== undefined && statedBy(repository, venue, of).has(name))
      return `venue ${venue}`;
    return path;
  };
  return all.map((each) => ({
    of: each.of,
    name: each.name,
    scope: scopeOf(each),
    path,
    place: each.place,
    defines: each.defines,
  }));
}

/** Every name of one file. */
export function mentionsIn(repository: OpenRepository, path: string, text: string, kind: FileKind): readonly Mention[] {
  const surveys = (repository.files.surveys ?? []).map((file) => file.text.length).join(",");
  const key = `${path}\u0000${kind}\u0000${surveys}\u0000${text}`;
  const found = known.get(key) ?? read(repository, path, text, kind);
  known.delete(key);
  known.set(key, found);
  const [oldest] = known.keys();
  if (known.size > MOST && oldest !== undefined) known.delete(oldest);
  return found;
}

/** The files of a repository with what they are. */
export function filesOf({
  files,
}: OpenRepository): readonly { readonly path: string; readonly text: string; readonly kind: FileKind }[] {
  // The texts of many documents are read when they are looked at.
  const of = (kind: FileKind, list: readonly { readonly path: string; readonly text: string }[]) =>
    list.map((file) => ({
      path: file.path,
      kind,
      get text(): string {
        return file.text;
      },
    }));
  return [
    ...of("build", files.documents),
    ...of("survey", files.surveys ?? []),
    ...of("parts", files.parts),
    ...of("stock", stockFiles(files)),
    ...of("house standard", [...(files.houseStandard ? [files.houseStandard] : []), ...(files.folderStandards ?? [])]),
  ];
}

/** What a file that is in no list yet would be, by its name and text. */
export function kindOfText(path: string, text: string): FileKind {
  if (!/\.ya?ml$/iu.test(path)) return surveyKind(text) === "other" ? "build" : "survey";
  if (/(?:^|\/)house-standard\.yaml$/u.test(path)) return "house standard";
  if (/(?:^|\/)stock\.yaml$/u.test(path)) return "stock";
  return isWish(text) ? "wish" : "parts";
}

/** Everything of one kind that is written in the repository. */
export const definedIn = (repository: OpenRepository, kind: FileKind, of: NameKind): readonly Mention[] =>
  filesOf(repository)
    .filter((file) => file.kind === kind)
    .flatMap(({ path, text }) => mentionsIn(repository, path, text, kind))
    .filter((each) => each.of === of && each.defines);

/** Wherever something of a kind is called so, file by file. */
function* called(repository: OpenRepository, of: NameKind, name: string): InSteps<readonly Mention[]> {
  const found: Mention[] = [];
  for (const file of filesOf(repository)) {
    yield;
    const { path, text, kind } = file;
    // What is called so has the name in its text as it is: other spellings of YAML are no mention.
    if (!text.includes(name)) continue;
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
  const taken = others.some((each) => each.scope === scope && each.defines);
  return taken ? `There is a ${of} \`${to}\` already.` : undefined;
}
