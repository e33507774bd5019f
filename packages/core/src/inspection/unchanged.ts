import type { Known, Origin } from "@plumbmark/calc";
import type { Place } from "../document/place.js";
import type { Data } from "../document/yaml/yaml.js";
import type { Build } from "../model/build.js";
import { partsUsed, placeNaming } from "../model/reading/parts-used.js";
import type { Reader } from "../model/reading/reader.js";
import { LOOK, LOOKED_AT, type Look, type Reads } from "../model/reading/reads.js";
import type { DocumentModel } from "./document-model.js";

/** Plain data, with its keys in their order: findings are told in that order. */
function sameData(one: Data | undefined, other: Data | undefined): boolean {
  if (one === other) return true;
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) return false;
  const [keys, others] = [Object.keys(one), Object.keys(other)];
  return (
    Array.isArray(one) === Array.isArray(other) &&
    keys.length === others.length &&
    keys.every((key, index) => key === others[index] && sameData(Reflect.get(one, key), Reflect.get(other, key)))
  );
}

const asText = (value: unknown): string => JSON.stringify(value) ?? "";

const samePlace = (one: Place, other: Place): boolean =>
  one === other ||
  (one.line === other.line &&
    one.column === other.column &&
    one.endLine === other.endLine &&
    one.endColumn === other.endColumn);

function sameOrigin(one: Origin, other: Origin): boolean {
  if (one.from !== "written" || other.from !== "written") return asText(one) === asText(other);
  // What a survey states of a path is one thing for as long as the survey is.
  const sameStated = one.stated === other.stated || asText(one.stated) === asText(other.stated);
  return sameStated && one.path === other.path && one.text === other.text;
}

/** Whether a quantity says the same and comes from the same place. */
const sameQuantity = (one: Known | undefined, other: Known | undefined): boolean =>
  one === other ||
  (one !== undefined &&
    other !== undefined &&
    one.value === other.value &&
    one.kind === other.kind &&
    one.unit === other.unit &&
    one.sure === other.sure &&
    sameOrigin(one.origin, other.origin));

function every<T>(all: Iterable<T>, is: (each: T) => boolean): boolean {
  for (const each of all) if (!is(each)) return false;
  return true;
}

const namesUsed = (reader: Reader) => partsUsed(reader).map(({ part, path }) => [part.name, path]);

const linesBefore = (text: string, offset: number): number => text.slice(0, offset).match(/\r\n|\n|\r/gu)?.length ?? 0;

/** Whether two documents have the same body at the same lines. */
function sameBody(one: Build, other: Build): boolean {
  const [was, is] = [one.markdown, other.markdown];
  if (was === is) return true;
  const [from, to] = [was.frontMatter?.to ?? 0, is.frontMatter?.to ?? 0];
  return was.text.slice(from) === is.text.slice(to) && linesBefore(was.text, from) === linesBefore(is.text, to);
}

/** Tells whether what was worked out for an earlier model of a document holds for a later one of the same repository. */
export class Unchanged {
  readonly #same = new Map<string, boolean>();
  /** By the kind of the look. */
  readonly #sameAt: Map<string, boolean>[] = Object.values(LOOK).map(() => new Map());
  readonly #holds = new Map<Reads, boolean>();

  constructor(
    private readonly was: DocumentModel,
    private readonly is: DocumentModel,
    /** Whether what all documents promise is the same. */
    private readonly samePromises: boolean,
  ) {}

  /** Whether everything that was looked at is as it was. */
  holds(reads: Reads): boolean {
    const known = this.#holds.get(reads);
    if (known !== undefined) return known;
    const holds =
      !reads.unknown &&
      every(reads.others, (what) => this.#isSame(what)) &&
      this.#isSameToLooks(reads) &&
      every(reads.inner, (inner) => this.holds(inner));
    this.#holds.set(reads, holds);
    return holds;
  }

  #isSameToLooks({ looks }: Reads): boolean {
    if (looks.length === 0 || this.was.build.reader === this.is.build.reader) return true;
    return Object.values(LOOK).every((look) => {
      const paths = looks[look];
      return paths === undefined || every(paths, (path) => this.#isSameAt(look, path));
    });
  }

  #isSameAt(look: Look, path: string): boolean {
    const all = this.#sameAt[look] as Map<string, boolean>;
    const known = all.get(path);
    if (known !== undefined) return known;
    const same = this.#compareAt(look, path);
    all.set(path, same);
    return same;
  }

  #isSame(what: string): boolean {
    const known = this.#same.get(what);
    if (known !== undefined) return known;
    const same = this.#compare(what);
    this.#same.set(what, same);
    return same;
  }

  #compare(what: string): boolean {
    const [was, is] = [this.was.build, this.is.build];
    switch (what) {
      case LOOKED_AT.passing:
        return false;
      case LOOKED_AT.body:
        return sameBody(was, is);
      case LOOKED_AT.text:
        return was.text === is.text;
      case LOOKED_AT.mistakes:
        return asText(this.was.mistakes) === asText(this.is.mistakes);
      case LOOKED_AT.names:
        return asText(was.context.sameName) === asText(is.context.sameName);
      case LOOKED_AT.promises:
        return this.samePromises;
    }
    return was.reader === is.reader || this.#compareFront(what);
  }

  /** Of two front matters of which at least the text is another. */
  #compareFront(what: string): boolean {
    const [was, is] = [this.was.build.reader, this.is.build.reader];
    switch (what) {
      case LOOKED_AT.whole:
        return false;
      case LOOKED_AT.venue:
        return was.venue === is.venue || (was.venue !== undefined && is.venue?.statesAs(was.venue) === true);
      case LOOKED_AT.parts:
        return asText(namesUsed(was)) === asText(namesUsed(is));
      case LOOKED_AT.implausible:
        return asText(was.implausible) === asText(is.implausible);
    }
    // Nobody knows what this is.
    return false;
  }

  #compareAt(look: Look, path: string): boolean {
    const [was, is] = [this.was.build.reader, this.is.build.reader];
    switch (look) {
      case LOOK.data:
        return sameData(was.data(path), is.data(path));
      case LOOK.there:
        return was.has(path) === is.has(path);
      case LOOK.naming:
        return placeNaming(was, path) === placeNaming(is, path);
      case LOOK.keys:
        return asText(was.keys(path)) === asText(is.keys(path));
      case LOOK.quantity:
        return sameQuantity(was.quantities.get(path), is.quantities.get(path));
      case LOOK.place:
        return samePlace(was.place(path), is.place(path));
    }
  }
}
