import { schemas } from "@plumbmark/core";
import { onceFor } from "../../site/once-for.js";
import { followed, type Group, groupsOf, isSchema, type SchemaPiece } from "./fields.js";

/** A kind of file people write, and what its page says of it. */
export interface KnownFile {
  /** Name of its schema and of its page. */
  readonly name: string;
  readonly title: string;
  readonly says: string;
  readonly schema: SchemaPiece;
}

/** Every kind of file people write, in the order they come upon them. */
export const knownFiles: readonly KnownFile[] = [
  {
    name: "build",
    title: "Keys of a build document",
    says: "The front matter of a build document: what stands between the two lines of `---` at its head.",
    schema: schemas.buildSchema,
  },
  {
    name: "parts",
    title: "Keys of a part",
    says: "A file of the parts catalogue has one part under each name. Its `kind` decides which keys it has.",
    schema: schemas.partsSchema,
  },
  {
    name: "survey",
    title: "Keys of a survey",
    says: "The front matter of the survey of a venue. A build that names the venue takes from it what it does not write itself.",
    schema: schemas.surveySchema,
  },
  {
    name: "stock",
    title: "Keys of the stock list",
    says: "What is on the shelf.",
    schema: schemas.stockSchema,
  },
  {
    name: "house-standard",
    title: "Keys of a house standard",
    says: "Your edition of the rules. The settings of each rule stand on the rule's own page.",
    schema: schemas.houseStandardSchema,
  },
  {
    name: "wish",
    title: "Keys of a wish",
    says: "What a client asks for, before there is a build document.",
    schema: schemas.wishSchema,
  },
];

/** What stands under one heading: groups of keys, all of one kind of part in the catalogue. */
export interface Chapter {
  readonly id: string;
  readonly title: string;
  readonly description?: string;
  readonly groups: readonly Group[];
}

const described = ({ description }: { readonly description?: unknown }) =>
  typeof description === "string" ? { description } : {};

/** The kinds of part, in the order of the schema. */
export function kindsOfPart(): readonly { readonly kind: string; readonly schema: SchemaPiece }[] {
  const { $defs, additionalProperties } = schemas.partsSchema as {
    $defs: Record<string, SchemaPiece>;
    additionalProperties: SchemaPiece;
  };
  return (additionalProperties.oneOf as readonly SchemaPiece[]).map(({ $ref }) => {
    const kind = String($ref).replace("#/$defs/", "");
    return { kind, schema: $defs[kind] as SchemaPiece };
  });
}

const ofPart = (): readonly Chapter[] =>
  kindsOfPart().map(({ kind, schema }) => ({
    ...{ id: kind, title: kind, ...described(schema) },
    groups: groupsOf(schemas.partsSchema, schema).map((group) => ({
      ...group,
      path: group.path === "" ? kind : `${kind}.${group.path}`,
      fields: group.fields.map((field) => ({ ...field, path: `${kind}.${field.path}` })),
    })),
  }));

/** Groups by the outermost key they stand under; those at the top come first. */
function byOutermost(file: KnownFile): readonly Chapter[] {
  const groups = groupsOf(file.schema);
  const outermost = ({ path }: Group): string => path.split(".", 1)[0] ?? "";
  const titles = file.schema.properties as Readonly<Record<string, SchemaPiece>>;
  return [...new Set(groups.map(outermost))].map((key) => {
    const own = isSchema(titles[key]) ? followed(file.schema, titles[key]) : {};
    const title = key === "" ? "At the top" : key;
    return {
      id: key === "" ? "top" : key,
      title,
      ...described(own),
      groups: groups.filter((group) => outermost(group) === key),
    };
  });
}

/** What a page has, chapter by chapter. The same for every site. */
export const chaptersOf = onceFor((file: KnownFile): readonly Chapter[] =>
  file.name === "parts" ? ofPart() : byOutermost(file),
);

/** The id of a key's row: of letters, digits, dashes and underscores. */
export const keyAnchor = (path: string): string =>
  `Key-${path.replaceAll("*", "NAME").replace(/[^A-Za-z0-9-]/gu, "_")}`;
