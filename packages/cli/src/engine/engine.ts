import type { DocumentFile, InspectionRecord, InspectOptions, RepositoryFiles, Rule } from "@plumbmark/core";
import type { LotShapes, WishEntry, WrittenSite } from "@plumbmark/docs-site";
import type { Scope } from "../git/scope.js";
import type { Figures } from "../record/differences.js";
import type { FileSource } from "../source/source.js";
import type { ResultCache } from "./cache/cache.js";
import { inspectBy } from "./inspect-all.js";
import { publishBy, type SheetsMade, type SheetsWork, type WishesWork } from "./publish-site.js";

/** Which docs repository is worked on, and by what. */
export interface EngineRequest {
  readonly folder: string;
  readonly paths: readonly string[];
  readonly standard?: string | undefined;
  /** The day of the inspection, `2027-03-05`. */
  readonly today: string;
  /** False refuses the plugins of the house standard. */
  readonly plugins?: boolean | undefined;
  /** Where the files are read from; the disk when nothing is said. */
  readonly source?: FileSource | undefined;
  /** Takes what is told besides the result: what plugins print, patterns that match nothing. */
  readonly warn: (text: string) => void;
}

export interface InspectRequest extends EngineRequest {
  /** Whether the checks that hold are listed, too. */
  readonly every: boolean;
  /** A change in git: what it touched, and of the rest what comes out differently because of it. Everything without one. */
  readonly scope?: Scope | undefined;
  /** Whether weight, power and least margin of each build are wanted; every document has to be readable then. */
  readonly figures?: boolean;
}

export interface InspectResult {
  readonly root: string;
  readonly rules: readonly Rule[];
  readonly record: InspectionRecord;
  /** Files that were named and are no build documents. */
  readonly leftAlone: readonly string[];
  /** Whether a document was asked for. */
  readonly wants: (path: string) => boolean;
  /** By the document's path; empty unless they were asked for. */
  readonly figures: ReadonlyMap<string, Figures>;
}

export interface PublishRequest extends EngineRequest {
  /** The folder of the site. */
  readonly to: string;
  /** Whether the prose of surveys is published, too. */
  readonly venueProse?: boolean | undefined;
  readonly progress?: ((text: string) => void) | undefined;
}

export interface PublishResult extends WrittenSite {
  readonly root: string;
  /** Whether a plugin failed somewhere: part of the inspection could not be carried out. */
  readonly failed: boolean;
  /** Documents whose sheets were made anew; the others stand as they were published before. */
  readonly anew: readonly string[];
}

/** What inspects and publishes. Commands know nothing of how it does so. */
export interface Engine {
  /** @throws Trouble, or StandardError when a house standard cannot be used */
  readonly inspect: (request: InspectRequest) => Promise<InspectResult>;
  /** @throws Trouble, or StandardError when a house standard cannot be used */
  readonly publish: (request: PublishRequest) => Promise<PublishResult>;
}

/** What engines do each in their own way; whatever the way, the results are the same. */
export interface Means {
  /** What is cached for a docs repository; undefined when nothing is. */
  readonly cacheFor: (root: string) => ResultCache | undefined;
  /** The documents with what others have to know of each. */
  readonly outline: (files: RepositoryFiles, cache: ResultCache | undefined) => Promise<readonly DocumentFile[]>;
  readonly judge: (
    files: RepositoryFiles,
    rules: readonly Rule[],
    options: InspectOptions,
    cache: ResultCache | undefined,
  ) => Promise<InspectionRecord>;
  readonly makeSheets: (work: SheetsWork) => Promise<SheetsMade>;
  readonly draftWishes: (work: WishesWork) => Promise<readonly WishEntry[]>;
  readonly shapes: (work: Pick<WishesWork, "input" | "cache">) => Promise<readonly LotShapes[]>;
}

/** An engine that works by these means. */
export const engineOf = (means: Means): Engine => ({ inspect: inspectBy(means), publish: publishBy(means) });
