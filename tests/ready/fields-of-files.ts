import { readdirSync, readFileSync } from "node:fs";
import { type OpenRepository, openRepository, type RepositoryFiles, type SourceFile, schemas } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { starterRepository } from "@plumbmark/starter";
import { parse, parseDocument } from "yaml";
import { approvedAsTheyAre, PAPER, starter, TODAY } from "../documents/repository.js";
import { corpus } from "./corpus.js";
import { gist, propertiesOf } from "./judged.js";

const KINDS = ["parts", "stock", "surveys", "standard"] as const;
type Kind = (typeof KINDS)[number];
type Keys = readonly (string | number)[];

/** Where a field is written: in a file of a small repository. */
export interface Place {
  readonly files: RepositoryFiles;
  readonly kind: Kind;
  readonly file: SourceFile;
  readonly keys: Keys;
}

const defs = schemas.partsSchema.$defs as Readonly<Record<string, Readonly<Record<string, unknown>>>>;
const PARTS = Object.keys(defs).filter((name) =>
  Object.hasOwn((defs[name] as { readonly properties?: object }).properties ?? {}, "kind"),
);

const named = (kind: Kind, paths: readonly string[]): readonly string[] =>
  paths.map((path) => `${kind} ${path.replaceAll("*", "_")}`);

/** Every field by its general place: `parts panel.mass`, `stock lots._.count`, `surveys circuits._.breaker`. */
export const ALL: readonly string[] = [
  ...PARTS.flatMap((part) =>
    named(
      "parts",
      propertiesOf({ ...defs[part], $defs: defs }).map((path) => `${part}.${path}`),
    ),
  ),
  ...named("stock", propertiesOf(schemas.stockSchema)),
  ...named("surveys", propertiesOf(schemas.surveySchema)),
  ...named("standard", propertiesOf(schemas.houseStandardSchema)),
];

const KNOWN = new Set(ALL);

/** The general place of some keys, as far as the schema has one. */
function fieldAt(kind: Kind, [first, ...rest]: Keys, data: unknown): string | undefined {
  const part = (data as Readonly<Record<string, { readonly kind?: string }>>)[String(first)];
  let here = `${kind} ${kind === "parts" ? part?.kind : first}`;
  for (const key of rest) here = KNOWN.has(`${here}.${key}`) ? `${here}.${key}` : `${here}._`;
  return KNOWN.has(here) ? here : undefined;
}

function* keysIn(data: unknown, at: Keys = []): Iterable<Keys> {
  if (typeof data !== "object" || data === null) return;
  for (const [key, value] of Object.entries(data)) {
    const here = [...at, Array.isArray(data) ? Number(key) : key];
    yield here;
    yield* keysIn(value, here);
  }
}

const END = "\n---\n";
const yamlOf = ({ text }: SourceFile, kind: Kind): string =>
  kind === "surveys" ? text.slice(text.indexOf("\n") + 1, text.indexOf(END)) : text;

function filesOf(files: RepositoryFiles, kind: Kind): readonly SourceFile[] {
  if (kind === "stock") return files.stock ? [files.stock] : [];
  if (kind === "standard") return files.houseStandard ? [files.houseStandard] : [];
  return files[kind] ?? [];
}

/** The text of a file without one of its fields. */
function without({ kind, file, keys }: Place): string {
  const document = parseDocument(yamlOf(file, kind));
  document.deleteIn(keys);
  const yaml = document.toString({ lineWidth: 0 });
  return kind === "surveys" ? `---\n${yaml}${file.text.slice(file.text.indexOf(END) + 1)}` : yaml;
}

/** What the documents come to; with the levels, where they are what is changed. */
function whole(repository: OpenRepository, kind: Kind): string {
  const checks = repository.all().documents.flatMap((document) => document.checks);
  const levels = kind === "standard" ? checks.map(({ rule, level }) => `${rule} ${level}`) : [];
  return gist(checks) + levels.sort().join();
}

const opened = new WeakMap<RepositoryFiles, OpenRepository>();

/** Whether leaving a field out changes a check, or makes the file one that cannot be used. */
export function decides(place: Place): boolean {
  const { files, kind, file } = place;
  const repository = opened.get(files) ?? openRepository(files, rules, { today: TODAY, every: true, turns: false });
  opened.set(files, repository);
  const was = whole(repository, kind);
  repository.replace(file.path, without(place));
  try {
    return whole(repository, kind) !== was;
  } catch (error) {
    if (kind === "standard" && error instanceof Error && error.name === "StandardError") return true;
    throw error;
  } finally {
    repository.replace(file.path, file.text);
  }
}

/** The starter as it is: builds that refer to surveys. */
function surveyed(): RepositoryFiles {
  const all = (folder: string): readonly SourceFile[] =>
    readdirSync(`${starterRepository}/${folder}`).map((name) => ({
      path: `${folder}/${name}`,
      text: readFileSync(`${starterRepository}/${folder}/${name}`, "utf8"),
    }));
  const papers = readdirSync(`${starterRepository}/letters`).map((name) => `letters/${name}`);
  return approvedAsTheyAre({
    ...starter(),
    documents: all("builds"),
    surveys: all("venues"),
    papers: [...papers, PAPER],
  });
}

type Field = readonly [field: string, keys: Keys];

const fieldsOfText = new Map<string, readonly Field[]>();

/** Fields of a file; many repositories have the same ones. */
function fieldsOf(file: SourceFile, kind: Kind): readonly Field[] {
  const known = fieldsOfText.get(file.text);
  if (known) return known;
  const data = parse(yamlOf(file, kind)) as unknown;
  const fields = [...keysIn(data)].flatMap((keys): Field[] => {
    const field = fieldAt(kind, keys, data);
    return field === undefined ? [] : [[field, keys]];
  });
  fieldsOfText.set(file.text, fields);
  return fields;
}

/** Whether a document, or a part of the catalogue, names a part. */
const isNamed = ({ documents, parts }: RepositoryFiles, name: string): boolean =>
  documents.some(({ text }) => text.includes(name)) || parts.some(({ text }) => text.split(name).length > 2);

/** Where each field is written: first in small repositories of their own files, then where others' files are shared. */
export function places(): ReadonlyMap<string, readonly Place[]> {
  const shared = new Set([...starter().parts, starter().stock].map((file) => file?.text));
  const own = new Map<string, Place[]>();
  const others = new Map<string, Place[]>();
  const put = (into: Map<string, Place[]>, field: string, place: Place): void => {
    const list = into.get(field) ?? [];
    into.set(field, list);
    list.push(place);
  };
  for (const files of [...corpus().map((each) => each()), surveyed()])
    for (const kind of KINDS)
      for (const file of filesOf(files, kind)) {
        const isShared = files.documents.length < 5 && shared.has(file.text);
        for (const [field, keys] of fieldsOf(file, kind)) {
          const place = { files, kind, file, keys };
          if (!isShared && (kind !== "parts" || isNamed(files, String(keys[0])))) put(own, field, place);
          // What no document names, itself or by an assembly, decides nothing.
          else if (isNamed(files, String(keys[kind === "parts" ? 0 : 1]))) put(others, field, place);
        }
      }
  const smallFirst = (list: readonly Place[] = []): readonly Place[] =>
    list.toSorted((one, other) => one.files.documents.length - other.files.documents.length);
  return new Map(ALL.map((field) => [field, [...smallFirst(own.get(field)), ...(others.get(field) ?? [])]] as const));
}
