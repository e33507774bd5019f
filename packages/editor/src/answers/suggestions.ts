import type { Kind } from "@plumbmark/calc";
import {
  cellName,
  isDevice,
  type OpenRepository,
  type Part,
  type Place,
  scheduleNames,
  usualUnits,
} from "@plumbmark/core";
import { type Cursor, type CursorPoint, cursorAt } from "./cursor.js";
import {
  descriptionOf,
  type Form,
  fixedWordsOf,
  formsAt,
  foundOf,
  isGroup,
  keysUnder,
  quantitiesOf,
  refersOf,
  titleOfField,
} from "./fields.js";
import { definedIn, mentionsIn } from "./mentions.js";
import { builtIn, type NamedAt, type NameKind, nameAt } from "./names.js";
import type { OpenedFile } from "./opened.js";
import { isIn, linesOf, zoneOf } from "./zone.js";

/** Something that may be written at a place. */
export interface Suggestion {
  readonly label: string;
  readonly kind: "key" | "name" | "word" | "quantity" | "value";
  /** What it takes the place of, and what is written. */
  readonly place: Place;
  readonly text: string;
  /** In a few words what it is. */
  readonly about?: string;
  /** Told at length. */
  readonly told?: string;
  /** Those that are needed, or of this very kind, come first. */
  readonly first?: boolean;
}

const NUMBER = /^(-?\d+(?:\.\d+)?)\s*([^\s\d]*)$/u;

function aboutPart({ kind, data, file }: Part): string {
  const { describes } = data;
  return typeof describes === "string" ? describes : `${kind} in ${file}`;
}

const partsOf = ({ catalogue }: OpenRepository, kinds: readonly string[] = []): readonly Part[] => {
  const all = [...catalogue.parts.values()];
  return kinds.length === 0 ? all : all.filter(({ kind }) => kinds.includes(kind));
};

/** Names that may stand somewhere, each with what it is. */
function namesFor(
  file: OpenedFile,
  { of, kinds }: NamedAt,
  path: readonly string[],
): readonly (readonly [name: string, about: string])[] {
  const { repository } = file;
  if (of === "part") return partsOf(repository, kinds).map((part) => [part.name, aboutPart(part)]);
  if (of === "lot")
    return [...repository.stock.lots.values()].map(({ name, panel, count }) => [name, `${count} of ${panel}`]);
  if (of === "rule") return repository.rules.map(({ id, states }) => [id, states]);
  if (of === "place") return placesIn(file);
  const table = builtIn[of];
  const tabled = table ? table().map((name) => [name, of] as const) : [];
  if (of === "section")
    return [...partsOf(repository, ["bar"]).map((part) => [part.name, aboutPart(part)] as const), ...tabled];
  if (table) return tabled;
  return [...new Set(ownNames(file, of, path))].map((name) => [name, of]);
}

/** Names of the same document, and of the venue it is at. */
function ownNames(file: OpenedFile, of: NameKind, path: readonly string[]): readonly string[] {
  const { repository, model } = file;
  if (of === "venue" || of === "build")
    return definedIn(repository, of === "venue" ? "survey" : "build", of).map(({ name }) => name);
  // While the text is broken, the names are those of the last one that could be read.
  const text = model && model.text !== file.text ? [model.text, file.text] : [file.text];
  const own = text
    .flatMap((each) => mentionsIn(repository, file.path, each, file.kind))
    .filter((each) => each.of === of && each.defines);
  const itself = path.at(-1) === "like" ? path.at(-2) : undefined;
  const stated =
    of === "circuit" || of === "supply"
      ? Object.keys((model?.build.reader.data(of === "circuit" ? "power.circuits" : "power.supplies") ?? {}) as object)
      : [];
  const hangs = of === "hang" ? (model?.build.bars ?? []).flatMap((bar) => bar.hangs.map(({ name }) => name)) : [];
  return [...own.map(({ name }) => name), ...stated, ...hangs].filter((name) => name !== itself);
}

function placesIn({ model }: OpenedFile): readonly (readonly [string, string])[] {
  return (model?.build.devices ?? []).flatMap(({ stands, label }) =>
    stands === undefined ? [] : [[stands, label] as const],
  );
}

const snake = (columns: number, rows: number): string =>
  Array.from({ length: rows }, (_, row) => {
    const [left, right] = [cellName({ row, column: 0 }), cellName({ row, column: columns - 1 })];
    return row % 2 === 0 ? `${left}..${right}` : `${right}..${left}`;
  }).join(", ");

/** A face with its cells, there and back again, and row by row. */
function cellsIn({ model }: OpenedFile): readonly (readonly [string, string])[] {
  return (model?.build.faces ?? []).flatMap((face) => {
    if (face.columns < 1 || face.rows < 1 || face.rows > 40) return [];
    const rows = Array.from(
      { length: face.rows },
      (_, row) => `${cellName({ row, column: 0 })}..${cellName({ row, column: face.columns - 1 })}`,
    );
    const all: (readonly [string, string])[] = [
      [`${face.name} ${snake(face.columns, face.rows)}`, "every panel, there and back again"],
    ];
    return face.rows === 1
      ? all
      : [...all, ...rows.map((row, index) => [`${face.name} ${row}`, `row ${index + 1}`] as const)];
  });
}

const toldOf = (forms: readonly Form[]): { readonly told?: string } => {
  const text = [descriptionOf(forms), foundOf(forms) === undefined ? undefined : `Found: ${foundOf(forms)}.`]
    .filter((each) => each !== undefined)
    .join("\n\n");
  return text === "" ? {} : { told: text };
};

function keyCompletions(file: OpenedFile, cursor: Cursor): readonly Suggestion[] {
  const { path, place, beside, word } = cursor;
  const taken = new Set(beside);
  const known = keysUnder(file, path).filter(({ key, deprecated }) => !deprecated && (!taken.has(key) || key === word));
  const after = (forms: readonly Form[]): string =>
    isGroup(forms) && !cursor.inline && !forms.some(({ type }) => type === "string") ? ":" : ": ";
  const keys = known.map(
    ({ key, forms, required }): Suggestion => ({
      label: key,
      kind: "key",
      place,
      text: isKeyed(file, cursor) ? key : `${key}${after(forms)}`,
      ...(titleOfField(forms) === undefined ? {} : { about: titleOfField(forms) as string }),
      ...toldOf(forms),
      ...(required ? { first: true } : {}),
    }),
  );
  const named = nameAt(file.kind, "key", [...path, word || "x"]);
  if (!named || named.defines) return keys;
  const names = namesFor(file, named, path).filter(([name]) => !taken.has(name));
  return [
    ...keys,
    ...names.map(
      ([name, about]): Suggestion => ({
        label: name,
        kind: "name",
        place,
        text: isKeyed(file, cursor) ? name : `${name}: `,
        about,
      }),
    ),
  ];
}

/** Whether a colon stands behind the word already. */
function isKeyed({ text }: OpenedFile, { place }: Cursor): boolean {
  return /^\s*:/u.test((linesOf(text)[place.endLine - 1] ?? "").slice(place.endColumn - 1));
}

function quantityCompletions(forms: readonly Form[], { before, place }: Cursor): readonly Suggestion[] {
  const [, number] = NUMBER.exec(before.trim()) ?? [];
  if (number === undefined) return [];
  return quantitiesOf(forms)
    .flatMap((kind) => usualUnits(kind as Kind))
    .map(
      (unit): Suggestion => ({
        label: `${number} ${unit}`,
        kind: "quantity",
        place,
        text: `${number} ${unit}`,
        about: titleOfField(forms) ?? "",
      }),
    );
}

function valueCompletions(file: OpenedFile, cursor: Cursor): readonly Suggestion[] {
  const { path, place } = cursor;
  const forms = formsAt(file, path);
  const put = (label: string, kind: Suggestion["kind"], about: string): Suggestion => ({
    label,
    kind,
    place,
    text: label,
    about,
  });
  const named = nameAt(file.kind, "value", path);
  const names =
    named?.form === "cells"
      ? cellsIn(file)
      : named && !named.defines && named.form === undefined
        ? namesFor(file, named, path)
        : referred(file, forms);
  return [
    ...names.map(([name, about]) => put(name, "name", about)),
    ...fixedWordsOf(forms).map((word) => put(word, "word", titleOfField(forms) ?? "")),
    ...quantityCompletions(forms, cursor),
  ];
}

/** What the schema itself says a name is of. */
function referred({ repository }: OpenedFile, forms: readonly Form[]): readonly (readonly [string, string])[] {
  const refers = refersOf(forms);
  if (refers === undefined) return [];
  if (refers === "connector") return (builtIn.connector?.() ?? []).map((name) => [name, "connector"]);
  const found = partsOf(repository).filter(({ kind }) => kind === refers || (refers === "device" && isDevice(kind)));
  return found.map((part) => [part.name, aboutPart(part)]);
}

/** A link that is being written: `[132 lb](calc:fac`. */
const LINK = /\]\(calc:([^)\s]*)$/u;

function proseCompletions(
  { model }: OpenedFile,
  line: string,
  { line: number, column }: CursorPoint,
): readonly Suggestion[] {
  const written = LINK.exec(line.slice(0, column - 1))?.[1];
  if (!model || written === undefined) return [];
  const behind = /^[^)\s]*/u.exec(line.slice(column - 1))?.[0] ?? "";
  const place = { line: number, column: column - written.length, endLine: number, endColumn: column + behind.length };
  const put = (label: string, about: string): Suggestion => ({ label, kind: "value", place, text: label, about });
  const { build } = model;
  return [
    ...[...build.values.keys()].map((path) => put(path, "computed value")),
    ...build.drawings.map((name) => put(`drawings.${name}`, "drawing")),
    ...scheduleNames.map((name) => put(`schedules.${name}`, "schedule")),
  ];
}

/** What may be written at a point of a file. */
export function suggestionsAt(file: OpenedFile, point: CursorPoint): readonly Suggestion[] {
  const lines = linesOf(file.text);
  const zone = zoneOf(lines, file.kind);
  if (!isIn(zone, point.line)) return proseCompletions(file, lines[point.line - 1] ?? "", point);
  const cursor = cursorAt(file.text, zone, point);
  if (!cursor) return [];
  return cursor.at === "key" ? keyCompletions(file, cursor) : valueCompletions(file, cursor);
}
