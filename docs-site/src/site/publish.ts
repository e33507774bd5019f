import {
  type DocumentFile,
  type InspectedDocument,
  type Outline,
  openRepository,
  outlineOf,
  type Promised,
  type RepositoryFiles,
  type Rule,
  type SourceFile,
  schemas,
} from "@plumbmark/core";
import { pageHtml } from "../pages/page.js";
import { sitePages } from "../pages/site-pages.js";
import { type LotShapes, stockShapes } from "../pages/stock-shapes.js";
import { searchFiles } from "../search/search-page.js";
import { sheet } from "../sheet/sheet.js";
import { sheetFiles } from "../sheet/sheet-sections.js";
import { siteStyle } from "../style/site-style.js";
import { draftedWish } from "../wishes/draft-wish.js";
import type { WishEntry } from "../wishes/wish-entry.js";
import { DRAFT_FOOT } from "../wishes/wish-pages.js";
import { draftFoot } from "../wishes/wish-style.js";
import type { SheetDependencies } from "./dependencies.js";
import { type DocumentSummary, summaryOf } from "./document-summary.js";
import { type PublishedDocument, placesOf, publishedDocument, type SheetPlace } from "./published-document.js";
import type { Site, SiteWithDocuments } from "./site.js";
import { rulePaths } from "./stated-rule.js";
import { tracedSite } from "./trace.js";

export interface PublishInput {
  readonly files: RepositoryFiles;
  /** Files of wishes: a page with its options is made of each. */
  readonly wishes?: readonly SourceFile[];
  readonly rules: readonly Rule[];
  /** The day of the inspection, `2027-03-05`. */
  readonly today: string;
  /** Bytes of a picture of the repository by its path from the root, or why there are none; without it none is shown. */
  readonly picture?: NonNullable<Site["picture"]>;
  /** Told of every picture that is not shown. */
  readonly unshown?: NonNullable<Site["unshown"]>;
  /** Whether the prose of surveys is published; it is not unless somebody says so. */
  readonly venueProse?: boolean;
  /** Whether these house standards were used before, see `InspectOptions`. */
  readonly accepted?: boolean;
}

const schemaFiles: readonly (readonly [name: string, schema: Readonly<Record<string, unknown>>])[] = [
  ["build", schemas.buildSchema],
  ["parts", schemas.partsSchema],
  ["stock", schemas.stockSchema],
  ["house-standard", schemas.houseStandardSchema],
  ["survey", schemas.surveySchema],
  ["wish", schemas.wishSchema],
  ["record", schemas.recordSchema],
  ["draft", schemas.draftSchema],
];

/** A schema's address is where it is published: it names no other. */
const published = ({ $id: _, ...schema }: Readonly<Record<string, unknown>>): string =>
  `${JSON.stringify(schema, null, 2)}\n`;

/**
 * Everything the sheets share, with nothing of the documents but where their sheets are.
 * @param places of all sheets, when `files` holds only some of the documents
 * @throws StandardError
 */
export function siteOf(
  { files, rules, today, picture, unshown, accepted = false }: PublishInput,
  places?: Site["places"],
): Site {
  const repository = openRepository(files, rules, { today, every: true, accepted, prose: true, keep: "nothing" });
  const record = repository.recordOf([]);
  const stated = repository.rules.map((rule) => ({ ...rule, own: !rules.includes(rule) }));
  const sheets = () => [...outlinesOf(files), ...record.documents.map(({ file }) => ({ path: file }))];
  return {
    repository,
    record,
    today,
    places: places ?? placesOf(sheets()),
    rules: stated,
    rulePaths: rulePaths(stated),
    ...(picture ? { picture } : {}),
    ...(unshown ? { unshown } : {}),
    pictures: new Map(),
  };
}

/** What is known of every document without inspecting it, in the order of the sheets. */
const outlinesOf = ({ documents }: RepositoryFiles): readonly Outline[] =>
  documents.map((file) => file.outline ?? outlineOf(file));

/** A file of the site: its path, and what stands in it. */
export type SiteFile = readonly [path: string, content: string | Uint8Array];

/** The files of one document's sheet, and what the pages about all documents show of it. */
export interface Sheet {
  readonly summary: DocumentSummary;
  readonly files: Iterable<SiteFile>;
}

const pageContext = ({ record, today }: Site) => ({ standard: record.standard, today });

function* filesOf(document: PublishedDocument, site: Site): Generator<SiteFile> {
  yield [document.page, pageHtml(sheet(document, site), pageContext(site))];
  for (const make of sheetFiles) yield* make(document, site);
}

const sheetOf = (document: PublishedDocument, site: Site): Sheet => ({
  summary: summaryOf(document, site),
  files: filesOf(document, site),
});

const placeOf = ({ places }: Site, file: string): SheetPlace => places.get(file) as SheetPlace;

/** A sheet of a document, with what it depends on. */
export interface TracedSheet extends Sheet {
  /** Pictures it shows, by path of the site; known when its files are made. */
  readonly pictures: Site["pictures"];
  /** Known when its files are made. */
  readonly dependencies: () => SheetDependencies;
}

function tracedSheet(inspected: InspectedDocument, site: Site): TracedSheet {
  const { entry, dependencies, trace } = inspected;
  const own = tracedSite(site, trace);
  return {
    ...sheetOf(publishedDocument(entry, placeOf(site, entry.file), inspected), own),
    pictures: own.pictures,
    dependencies: () => ({
      paths: dependencies.paths,
      otherBuilds: trace.otherBuilds,
      answers: trace.answers(),
    }),
  };
}

/**
 * Makes the sheet of a document, which is inspected for it and then let go: one of the site's files, or any whose outline
 * is among the others of them. @throws StandardError
 */
export const sheetOfDocument = (file: DocumentFile, site: Site): TracedSheet =>
  tracedSheet(site.repository.one(file), site);

/** Files of the catalogue and the stock that have mistakes get a sheet, too. */
export function* mistakenSheets(site: Site): Generator<Sheet> {
  for (const entry of site.record.documents) yield sheetOf(publishedDocument(entry, placeOf(site, entry.file)), site);
}

/** What pages about all documents show besides them. */
export interface SharedContent {
  readonly venueProse?: boolean | undefined;
  readonly wishes?: readonly WishEntry[];
  readonly shapes?: readonly LotShapes[];
}

/** Every file of the site that is not of one sheet alone. */
export function* sharedFiles(
  site: Site,
  files: RepositoryFiles,
  documents: readonly DocumentSummary[],
  { venueProse = false, wishes = [], shapes = [] }: SharedContent = {},
): Generator<SiteFile> {
  const whole: SiteWithDocuments = { ...site, documents, promises: promisesIn(files), venueProse, wishes, shapes };
  for (const page of sitePages(whole)) yield [page.path, pageHtml(page, pageContext(site))];
  yield* searchFiles(whole);
  yield ["style.css", siteStyle];
  if (wishes.length > 0) yield [DRAFT_FOOT, draftFoot];
  for (const [name, schema] of schemaFiles) yield [`schema/${name}.schema.json`, published(schema)];
}

/** What documents promise out of the stock, in the order of their files. */
export const promisesIn = (files: RepositoryFiles): readonly Promised[] =>
  outlinesOf(files)
    .toSorted((one, other) => (one.path < other.path ? -1 : 1))
    .flatMap(({ promises }) => promises);

/**
 * The files of the static site, one after another, so that each can be written before the next is made.
 * Nothing is read or written here, and the same input gives the same files.
 * @throws StandardError when the house standard cannot be used.
 */
export function* siteFiles(input: PublishInput): Generator<SiteFile> {
  const files = { ...input.files, documents: input.files.documents.map(withOutline) };
  const site = siteOf({ ...input, files });
  const documents: DocumentSummary[] = [];
  for (const file of files.documents) {
    const { summary, files: own, pictures } = sheetOfDocument(file, site);
    yield* own;
    yield* pictures;
    documents.push(summary);
  }
  for (const { summary, files: own } of mistakenSheets(site)) {
    yield* own;
    documents.push(summary);
  }
  const wishes = (input.wishes ?? []).map((file) => draftedWish(file, { ...input, files }));
  yield* sharedFiles(site, files, documents, {
    venueProse: input.venueProse,
    wishes,
    shapes: stockShapes({ ...input, files }, promisesIn(files)),
  });
}

/** Read once for the whole site. */
export const withOutline = (file: DocumentFile): DocumentFile =>
  file.outline ? file : { path: file.path, text: file.text, outline: outlineOf(file) };

/** The whole site at once, for those who look at it rather than write it. @throws StandardError */
export const publish = (input: PublishInput): ReadonlyMap<string, string> =>
  new Map([...siteFiles(input)].filter((file): file is [string, string] => typeof file[1] === "string"));
