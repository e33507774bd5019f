import type { Kind } from "@plumbmark/calc";
import { chainFor, isDevice, listRule, type Place, type Rule, scheduleNames, usualUnits } from "@plumbmark/core";
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
import { aboutPart, cellsIn, namesFor, partsOfKinds } from "./names/known-names.js";
import { builtIn, nameAt } from "./names/names.js";
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

/** A number whose unit is being written; it may be a bound, or inches behind feet. */
const NUMBER = /^((?:at (?:most|least) )?(?:\d+ ft )?-?\d+(?:\.\d+)?)\s*([^\s\d]*)$/u;

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
  if (!named || named.defines) return [...keys, ...settingCompletions(file, cursor)];
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

/** The rule a house standard asks something of at a path. */
function ruleAt({ kind, repository }: OpenedFile, [group = "", id = ""]: readonly string[]): Rule | undefined {
  const isOfRule = nameAt(kind, "key", [group, id])?.of === "rule";
  return isOfRule ? repository.rules.find((each) => each.id === id) : undefined;
}

/** Settings of the rule a house standard asks something of, with what is in force now. */
function settingCompletions(file: OpenedFile, { path, place, beside, word }: Cursor): readonly Suggestion[] {
  const rule = path.length === 2 ? ruleAt(file, path) : undefined;
  if (!rule) return [];
  const { standard, standards } = file.repository;
  const { settings } = listRule(rule, chainFor(standards, file.path), standard.practice ?? "us");
  return Object.entries(settings)
    .filter(([name]) => !beside.includes(name) || name === word)
    .map(([name, { text }]) => ({ label: name, kind: "key", place, text: `${name}: `, about: `in force: ${text}` }));
}

/** Whether a colon stands behind the word already. */
function isKeyed({ text }: OpenedFile, { place }: Cursor): boolean {
  return /^\s*:/u.test((linesOf(text)[place.endLine - 1] ?? "").slice(place.endColumn - 1));
}

function quantityCompletions(
  kinds: readonly string[],
  about: string,
  { before, word, place }: Cursor,
): readonly Suggestion[] {
  const [, number] = NUMBER.exec(before.trim()) ?? [];
  if (number === undefined) return [];
  // A guess stays one.
  const mark = /\s\?$/u.exec(word)?.[0] ?? "";
  const isBehindFeet = /\d ft /u.test(number);
  return kinds
    .flatMap((kind) => usualUnits(kind as Kind))
    .filter((unit) => !isBehindFeet || unit === "in")
    .map(
      (unit): Suggestion => ({
        label: `${number} ${unit}`,
        kind: "quantity",
        place,
        text: `${number} ${unit}${mark}`,
        about,
      }),
    );
}

/** What a setting of a rule may be: units behind a number, or one of its words. */
function settingValues(file: OpenedFile, cursor: Cursor): readonly Suggestion[] {
  const { path, place } = cursor;
  const name = path.length === 3 ? path[2] : undefined;
  const setting = name === undefined ? undefined : ruleAt(file, path)?.settings?.[name];
  if (!setting) return [];
  const { kind, describe, schema, us } = setting;
  const listed = Array.isArray(schema?.enum) ? schema.enum.map(String) : [];
  const words = typeof us === "boolean" ? ["true", "false"] : listed;
  return [
    ...words.map((word): Suggestion => ({ label: word, kind: "word", place, text: word, about: describe })),
    ...quantityCompletions(kind === undefined ? [] : [kind], describe, cursor),
  ];
}

/** Where a word stands, without quotes around it: they stay. */
function withinQuotes({ word, place }: Cursor): Place {
  const [, quote, end] = /^(["'])[^"']*(["']?)$/u.exec(word) ?? [];
  if (quote === undefined) return place;
  return { ...place, column: place.column + 1, endColumn: place.endColumn - (end === quote ? 1 : 0) };
}

function valueCompletions(file: OpenedFile, cursor: Cursor): readonly Suggestion[] {
  const { path } = cursor;
  const place = withinQuotes(cursor);
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
      : named && !named.defines && (named.form === undefined || named.form === "point")
        ? namesFor(file, named, path)
        : referred(file, forms);
  return [
    ...names.map(([name, about]) => put(name, "name", about)),
    ...fixedWordsOf(forms).map((word) => put(word, "word", titleOfField(forms) ?? "")),
    ...quantityCompletions(quantitiesOf(forms), titleOfField(forms) ?? "", cursor),
    ...settingValues(file, cursor),
  ];
}

/** What the schema itself says a name is of. */
function referred({ repository }: OpenedFile, forms: readonly Form[]): readonly (readonly [string, string])[] {
  const refers = refersOf(forms);
  if (refers === undefined) return [];
  if (refers === "connector") return (builtIn.connector?.() ?? []).map((name) => [name, "connector"]);
  const found = partsOfKinds(repository).filter(
    ({ kind }) => kind === refers || (refers === "device" && isDevice(kind)),
  );
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
  if (cursor.at === "key") return keyCompletions(file, cursor);
  // The first key of an item is written where a value might be.
  const isFirst = !cursor.inline && /^\d+$/u.test(cursor.path.at(-1) ?? "") && isGroup(formsAt(file, cursor.path));
  return [...(isFirst ? keyCompletions(file, cursor) : []), ...valueCompletions(file, cursor)];
}
