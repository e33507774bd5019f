import { fieldsUnder, schemas } from "@plumbmark/core";
import type { OpenedFile } from "./opened.js";
import type { FileKind } from "./zone.js";

/** What the schema says of a field, in one of the forms it may have. */
export type Form = Readonly<Record<string, unknown>>;

const ROOTS: Readonly<Record<FileKind, Form>> = {
  build: schemas.buildSchema,
  survey: schemas.surveySchema,
  parts: schemas.partsSchema,
  stock: schemas.stockSchema,
  "house standard": schemas.houseStandardSchema,
  wish: schemas.wishSchema,
};

const kindIn = (form: Form): unknown => ((form.properties as Form | undefined)?.kind as Form | undefined)?.const;

/** The kind of the part that stands under a name; undefined where it is not written, or is none. */
const kindOfPart = ({ repository, kind }: OpenedFile, name: string | undefined): string | undefined =>
  kind === "parts" && name !== undefined ? repository.catalogue.parts.get(name)?.kind : undefined;

/** What the schema says at a path, in every form; of a part only the forms of its kind. */
export function formsAt(file: OpenedFile, path: readonly string[]): readonly Form[] {
  const root = ROOTS[file.kind];
  const all = path.length === 0 ? [root] : fieldsUnder(root, path);
  const kind = kindOfPart(file, path[0]);
  if (kind === undefined || path.length > 1) return kind === undefined ? all : ofKind(file, path, kind, all);
  const own = all.filter((form) => kindIn(form) === kind);
  return own.length > 0 ? own : all;
}

/** Below a part, the forms of its own kind come from that kind's schema alone. */
function ofKind(file: OpenedFile, path: readonly string[], kind: string, all: readonly Form[]): readonly Form[] {
  const root = ROOTS[file.kind];
  const [name = "", ...rest] = path;
  const form = fieldsUnder(root, [name]).find((each) => kindIn(each) === kind);
  if (!form) return all;
  const found = fieldsUnder({ ...form, $defs: root.$defs }, rest);
  return found.length > 0 ? found : all;
}

/** A key that may stand somewhere. */
export interface KnownKey {
  readonly key: string;
  readonly forms: readonly Form[];
  readonly required: boolean;
  /** Whether others take its place: it is read for a while only. */
  readonly deprecated: boolean;
}

/** Keys that may stand under a path. */
export function keysUnder(file: OpenedFile, path: readonly string[]): readonly KnownKey[] {
  const found = new Map<string, KnownKey>();
  for (const form of formsAt(file, path)) {
    const required = (form.required as readonly string[] | undefined) ?? [];
    for (const [key, given] of Object.entries((form.properties as Readonly<Record<string, Form>> | undefined) ?? {})) {
      if (found.has(key)) continue;
      const forms = formsAt(file, [...path, key]);
      const deprecated = given.deprecated === true;
      found.set(key, { key, forms: forms.length > 0 ? forms : [given], required: required.includes(key), deprecated });
    }
  }
  return [...found.values()];
}

const texts = (forms: readonly Form[], word: string): readonly string[] => [
  ...new Set(forms.map((form) => form[word]).filter((text): text is string => typeof text === "string")),
];

export const titleOfField = (forms: readonly Form[]): string | undefined => texts(forms, "title")[0];
export const descriptionOf = (forms: readonly Form[]): string | undefined => texts(forms, "description")[0];
export const foundOf = (forms: readonly Form[]): string | undefined => texts(forms, "found")[0];
/** What the name that stands there is of: `panel`, `attachment`, `connector`. */
export const refersOf = (forms: readonly Form[]): string | undefined => texts(forms, "refers")[0];

/** Kinds of quantity that may stand there. */
export const quantitiesOf = (forms: readonly Form[]): readonly string[] => [
  ...new Set(forms.flatMap((form) => [form.quantity ?? []].flat() as unknown as readonly string[])),
];

/** Words that may stand there. */
export const fixedWordsOf = (forms: readonly Form[]): readonly string[] => [
  ...new Set(
    forms.flatMap((form) => [
      ...((form.enum as readonly unknown[] | undefined) ?? []).map(String),
      ...(typeof form.const === "string" ? [form.const] : []),
      ...(form.none === true ? ["none"] : []),
      ...(form.type === "boolean" ? ["true", "false"] : []),
    ]),
  ),
];

/** Whether a group of keys stands there. */
export const isGroup = (forms: readonly Form[]): boolean =>
  forms.some(
    (form) => form.type === "object" || form.properties !== undefined || form.additionalProperties instanceof Object,
  );

export const isList = (forms: readonly Form[]): boolean => forms.some((form) => form.type === "array");
