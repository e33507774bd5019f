import { type Data, type OpenRepository, type Place, placeName, readYaml } from "@plumbmark/core";
import { type FileKind, linesOf, zoneOf } from "../zone.js";
import { type NamedAt, type NameKind, nameAt } from "./names.js";

/** A name where it stands in a file. */
export interface Mention {
  readonly of: NameKind;
  readonly name: string;
  /** What a name is unique in: the repository, a document, a venue, or a bar of one. */
  readonly scope: string;
  readonly path: string;
  readonly place: Place;
  readonly defines: boolean;
  /** The bar a hang is of, or the structure a point of a venue is of. */
  readonly within?: string;
}

/** Names that are the same in the whole repository. */
const EVERYWHERE: readonly NameKind[] = ["build", "venue", "part", "lot", "connector", "section", "rule"];

/** Names a survey may give, or a document by itself; and those that nothing but a survey gives. */
const OF_VENUE: readonly NameKind[] = ["circuit", "supply", "place"];
const ALWAYS_OF_VENUE: readonly NameKind[] = ["structure", "point", "surface"];

interface Bare {
  readonly of: NameKind;
  readonly name: string;
  readonly within?: string;
  readonly place: Place;
  readonly defines: boolean;
}

const part = (place: Place, from: number, length: number): Place => ({
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
    return [...found, { of: "hang" as const, name: hang, within: name, from: offset(prefix.length + 2) }];
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
  return from < 0 ? undefined : part(place, from, text.length);
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
      place: part(place, from, name.name.length),
      defines: false,
    }));
  if (form === "cells") {
    const name = /^\s*([A-Za-z0-9][\w-]*)/u.exec(text)?.[1];
    return name === undefined
      ? []
      : [{ of, name, place: part(place, text.indexOf(name), name.length), defines: false }];
  }
  if (form === "hang" || form === "point") {
    const [outer, inside] = form === "hang" ? (["bar", "hang"] as const) : (["structure", "point"] as const);
    const [, within, name = ""] = /^(?:(.+)\.)??([^.]+?)(?:\.(?:left|right))?$/u.exec(text) ?? [];
    const at = part(place, within === undefined ? 0 : within.length + 1, name.length);
    const named = { of: inside, name, ...(within === undefined ? {} : { within }), place: at, defines };
    return within === undefined
      ? [named]
      : [{ of: outer, name: within, place: part(place, 0, within.length), defines: false }, named];
  }
  if (form === "route") {
    const [, from = "", to = ""] = /^(\S+) to (\S+)$/u.exec(text) ?? [];
    const ends = [
      { name: from, place: part(place, 0, from.length) },
      { name: to, place: part(place, text.length - to.length, to.length) },
    ];
    return ends.filter(({ name }) => name !== "").map((end) => ({ of, ...end, defines }));
  }
  const within = of === "hang" || of === "point" ? steps.at(-3) : undefined;
  const spelt = of === "place" ? placeName(text) : text;
  return [{ of, name: spelt, ...(within === undefined ? {} : { within }), place, defines }];
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

/** Names of a kind that the survey of a venue gives. */
function statedBy(repository: OpenRepository, venue: string, of: NameKind): ReadonlySet<string> {
  for (const { path, text } of repository.files.surveys ?? []) {
    const defined = mentionsIn(repository, path, text, "survey").filter(({ defines }) => defines);
    if (defined.some((each) => each.of === "venue" && each.name === venue))
      return new Set(defined.filter((each) => each.of === of).map(({ name }) => name));
  }
  return new Set();
}

/** The names of a file, and whether they are all: what cannot be read may have more. */
interface Names {
  readonly mentions: readonly Mention[];
  readonly isRead: boolean;
}

const known = new Map<string, Names>();
/** More files than a repository usually has open; what is beyond is read again. */
const MOST = 400;

function read(repository: OpenRepository, path: string, text: string, kind: FileKind): Names {
  const lines = linesOf(text);
  const { found, data } = inYaml(text, kind, lines);
  const isProse = kind === "build" || kind === "survey";
  const written = isMapping(data) ? data[kind === "survey" ? "survey" : "venue"] : undefined;
  const venue = typeof written === "string" ? written : undefined;
  const structures = new Set(found.filter(({ of, defines }) => of === "structure" && defines).map(({ name }) => name));
  const all = [...found, ...(isProse ? inProse(lines, zoneOf(lines, kind).to) : [])].map((each) =>
    // A route leads to a structure as it leads to a place.
    each.of === "place" && !each.defines && structures.has(each.name) ? { ...each, of: "structure" as const } : each,
  );
  // A point without its bar is that of the only bar which has one of that name.
  const barOf = new Map(
    all.filter(({ of, defines }) => of === "hang" && defines).map(({ name, within }) => [name, within]),
  );
  // Where no survey is named, the facts of the venue are those of the file.
  const isOfVenue = ({ of, name }: Bare): boolean =>
    venue !== undefined &&
    (kind === "survey" ||
      ALWAYS_OF_VENUE.includes(of) ||
      (OF_VENUE.includes(of) && statedBy(repository, venue, of).has(name)));
  const scopeOf = (bare: Bare): string => {
    const { of, name, within } = bare;
    if (EVERYWHERE.includes(of)) return "";
    if (of === "hang") return `${path} ${within ?? barOf.get(name) ?? ""}`;
    if (!isOfVenue(bare)) return path;
    return `venue ${venue}${of === "point" ? ` ${within}` : ""}`;
  };
  const mentions = all.map(({ from: _, ...each }: Bare & { readonly from?: number }) => ({
    ...each,
    scope: scopeOf(each),
    path,
  }));
  return { mentions, isRead: data !== null };
}

/** Every name of one file, kept from one look at it to the next. */
export function namesOf(repository: OpenRepository, path: string, text: string, kind: FileKind): Names {
  const surveys = (repository.files.surveys ?? []).map((file) => file.text.length).join(",");
  const key = `${path}\u0000${kind}\u0000${surveys}\u0000${text}`;
  const found = known.get(key) ?? read(repository, path, text, kind);
  known.delete(key);
  known.set(key, found);
  const [oldest] = known.keys();
  if (known.size > MOST && oldest !== undefined) known.delete(oldest);
  return found;
}

/** Every name of one file. */
export const mentionsIn = (
  repository: OpenRepository,
  path: string,
  text: string,
  kind: FileKind,
): readonly Mention[] => namesOf(repository, path, text, kind).mentions;
