import {
  type DocumentEntry,
  type OpenRepository,
  openRepository,
  type RepositoryFiles,
  verdictOf,
} from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { starter, TODAY } from "../documents/repository.js";

/** A place in the front matter as a JSON Pointer (RFC 6901). */
export type Pointer = string;

const escaped = (key: string): string => key.replaceAll("~", "~0").replaceAll("/", "~1");

/** Every field and every subtree of data, the whole of it apart. */
export function* pointersIn(data: unknown, at: Pointer = ""): Iterable<Pointer> {
  if (typeof data !== "object" || data === null) return;
  for (const [key, value] of Object.entries(data)) {
    const here = `${at}/${escaped(key)}`;
    yield here;
    yield* pointersIn(value, here);
  }
}

/** Groups whose keys are names of the author's own. */
const NAMED =
  /^\/(?:faces|power\/(?:circuits|runs|supplies)|data\/chains|picture\/(?:at|path)|rigging\/(?:bars|letter\/points)|also-bring|waivers)\/[^/]+|(?<=\/(?:hangs|extras|counts|lot|other-loads|points))\/[^/]+|\/\d+(?=\/|$)/gu;

/** The same place in any build: `/faces/banner/trim` is `faces.*.trim`. */
export const general = (pointer: Pointer): string =>
  pointer
    .replace(NAMED, (found) => found.replace(/[^/]+$/u, "*"))
    .slice(1)
    .replaceAll("/", ".");

/** That a field was left out ends every approval; whether the rest notices is what is asked. */
export const apartFromCode = ({ checks, status }: DocumentEntry): DocumentEntry["verdict"] =>
  verdictOf(
    checks.filter(({ rule, at }) => rule !== "document.sign-off" || at.path !== "approved.code"),
    status,
  );

export const opened = (files: RepositoryFiles = starter()): OpenRepository =>
  openRepository(files, rules, { today: TODAY, turns: false });

/** The verdict of a document without what stands at these places; undefined where one lies within another. */
export function without(repository: OpenRepository, document: string, places: readonly Pointer[]) {
  try {
    const changes = places.map((path) => ({ op: "remove" as const, document, path }));
    return apartFromCode(repository.with(changes).one(document).entry);
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/** The front matter of a document as it is read. */
export const frontOf = (repository: OpenRepository, document: string): unknown =>
  repository.model(document).build.reader.written.data;
