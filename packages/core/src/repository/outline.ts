import { type Markdown, readMarkdown } from "../document/body/markdown.js";
import { withLike } from "../document/like.js";
import { readByEntries } from "../document/yaml/by-entries.js";
import { type FrontMatter, frontMatterOf, isSameFrontMatter } from "../document/yaml/front-matter.js";
import { laidOver, type ValueChange } from "../document/yaml/overlay.js";
import { topLevelEntries } from "../document/yaml/top-level.js";
import { type Data, type Placed, readYaml } from "../document/yaml/yaml.js";
import { sharedVenue } from "../model/shared/venue.js";
import { promisesOf, stayOf } from "../model/stock/bookings.js";
import type { Outline, SourceFile } from "./files.js";

/** A document with its Markdown and its front matter read. */
export interface ReadDocument {
  readonly file: SourceFile;
  readonly markdown: Markdown;
  readonly placed: Placed | undefined;
  readonly name: string | undefined;
  /** What is laid over its front matter. */
  readonly changes?: readonly ValueChange[];
}

function textIn(data: Data | undefined, key: "build" | "practice"): string | undefined {
  if (data === null || typeof data !== "object" || Array.isArray(data)) return undefined;
  const text = (data as Record<string, Data>)[key];
  return typeof text === "string" ? text : undefined;
}

/** The name a document gives its build. */
export const documentName = (data: Data | undefined): string | undefined => textIn(data, "build");

/**
 * @param prose whether its whole body is going to be asked for
 * @param before how it was read before it was changed: what did not change is not read again
 */
export function readDocument(file: SourceFile, prose = false, before?: ReadDocument): ReadDocument {
  const markdown = readMarkdown(file.text, prose, before?.markdown);
  if (before && isSameFrontMatter(file.text, before.file.text))
    return { file, markdown, placed: before.placed, name: before.name };
  const placed = markdown.frontMatter && frontMatterRead(file.text, markdown.frontMatter, before);
  return { file, markdown, placed, name: documentName(placed?.data) };
}

/** What was read before by another text of the same document is gone on from; read once, all of it is read. */
function frontMatterRead(text: string, where: FrontMatter, before: ReadDocument | undefined): Placed {
  return before ? readByEntries(text, where, before.placed) : readYaml(text, where.from, where.to);
}

/** The same document with changes laid over its front matter. @throws RangeError when one leads to nothing */
export function withChanges(read: ReadDocument, changes: readonly [ValueChange, ...ValueChange[]]): ReadDocument {
  const placed = laidOver(read.placed, changes);
  return { ...read, placed, name: documentName(placed.data), changes: [...(read.changes ?? []), ...changes] };
}

/** What an outline is made of. */
const KEYS = ["build", "practice", "status", "venue", "on-site", "faces"];

const outlineData = (yaml: string): Data | undefined => withFacesAlike(readYaml(topLevelEntries(yaml, KEYS) ?? yaml));

/** The data with faces that are like one another written out: what a face takes out of the stock is copied with it. */
export const withFacesAlike = (placed: Placed): Data => withLike(placed, ["faces"]).data;

const outlinedBy = (text: string): string | undefined => {
  const place = frontMatterOf(text);
  return place && topLevelEntries(text.slice(place.from, place.to), KEYS);
};

/** Whether two texts have the same outline, as far as that can be told without reading it. */
export function isOutlinedAlike(one: string, other: string): boolean {
  const entries = outlinedBy(one);
  return entries !== undefined && entries === outlinedBy(other);
}

/**
 * What the other documents have to know of this one. Neither its body is read nor the rest of its front matter: that is
 * what takes the time, and a slip in it does not set panels free that are promised above.
 */
export function outlineOf(file: SourceFile): Outline {
  const { path, text } = file;
  const place = frontMatterOf(text);
  const data = place && outlineData(text.slice(place.from, place.to));
  return withText(outlineIn(path, data), file);
}

/** What it uses is read from its text when somebody asks; the text is not sent or kept with the outline. */
export const withText = (outline: Outline, file: SourceFile): Outline =>
  Object.defineProperty({ ...outline }, "text", { get: () => file.text });

const groupOf = (data: Data | undefined): Readonly<Record<string, Data>> =>
  data !== null && typeof data === "object" && !Array.isArray(data) ? (data as Record<string, Data>) : {};

/** The same of front matter that is read. */
export function outlineIn(path: string, data: Data | undefined): Outline {
  const [name, practice] = [documentName(data), textIn(data, "practice")];
  const group = groupOf(data);
  const [venue, stay] = [sharedVenue(group.venue), stayOf(group["on-site"])];
  return {
    path,
    ...(name === undefined ? {} : { name }),
    ...(practice === undefined ? {} : { practice }),
    ...(venue === undefined ? {} : { venue }),
    ...(stay === undefined ? {} : { stay }),
    ...(group.status === "draft" ? { draft: true as const } : {}),
    promises: promisesOf(path, data),
  };
}
