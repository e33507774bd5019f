import type { Promised, Stay } from "../model/stock/bookings.js";

/** What the result of a document depends on besides its own text and the house standards above it. Plain data. */
export interface Dependencies {
  /** Paths its links lead to, and whether a file or a folder is there. */
  readonly paths: Readonly<Record<string, boolean>>;
  /** Whether a rule looked at the paths of all files. */
  readonly everyPath: boolean;
  /** Whether it was looked which papers there are. */
  readonly papers: boolean;
  /** Parts that were looked up by name, there or not; `every` where the catalogue was gone through. */
  readonly parts: readonly string[] | "every";
  /** Surveys that were looked up by the name of their venue, there or not; `every` where they were gone through. */
  readonly surveys: readonly string[] | "every";
  /** Lots of the stock that were looked up by name, there or not; `every` where the stock was gone through. */
  readonly lots: readonly string[] | "every";
  /** Lots whose bookings by all documents were looked at; `every` where all bookings were. */
  readonly promised: readonly string[] | "every";
  /** Items of the stock that were looked up by name, there or not; `every` where all were gone through. */
  readonly items: readonly string[] | "every";
  /** What is shared and was looked at, each with the days it was looked at. */
  readonly shared: readonly SharedLook[];
  /** Whether a rule looked at the builds of other documents; the result may then depend on anything in them. */
  readonly otherBuilds: boolean;
}

/** Questions by their kind, each with what tells its answer from another; null where there was none. Plain data. */
export type Answers = Readonly<Record<string, readonly (readonly [name: string, told: string | null])[]>>;

/** Something shared, by its key, and the days on which it was looked at. */
export interface SharedLook {
  readonly key: string;
  readonly stay?: Stay;
}

/** Names that were looked up, or all of them. */
class Names {
  readonly #names = new Set<string>();
  #every = false;

  add(name: string): void {
    this.#names.add(name);
  }

  addEvery(): void {
    this.#every = true;
  }

  get found(): readonly string[] | "every" {
    return this.#every ? "every" : [...this.#names];
  }
}

/**
 * Notes what is looked at: while a document is judged and its sheet is made, or while a rule runs. It is handed in with
 * what is looked at.
 */
export class Trace {
  readonly parts = new Names();
  readonly lots = new Names();
  readonly surveys = new Names();
  readonly promised = new Names();
  /** Documents in which a rule looked at what is written. */
  readonly contents = new Set<string>();
  readonly #answers = new Map<string, Map<string, string | null>>();
  readonly items = new Names();
  readonly #shared = new Map<string, SharedLook>();
  everyPath = false;
  papers = false;
  /** Whether a rule looked at the builds of other documents. */
  otherBuilds = false;

  /**
   * Notes what was asked of somebody outside of the repository, and what tells the answer from another.
   * @param kind of the question, such as `pictures`
   */
  answer(kind: string, name: string, told: string | undefined): void {
    const known = this.#answers.get(kind) ?? new Map<string, string | null>();
    this.#answers.set(kind, known.set(name, told ?? null));
  }

  answers(): Answers {
    return Object.fromEntries([...this.#answers].map(([kind, each]) => [kind, [...each]]));
  }

  addShared(key: string, stay: Stay | undefined): void {
    this.#shared.set(key, { key, ...(stay ? { stay } : {}) });
  }

  /** @param paths where its links lead, and whether something is there */
  dependencies(paths: Dependencies["paths"]): Dependencies {
    const { everyPath, papers, otherBuilds } = this;
    const [parts, lots, promised] = [this.parts.found, this.lots.found, this.promised.found];
    const [items, shared] = [this.items.found, [...this.#shared.values()]];
    return { paths, everyPath, papers, parts, lots, surveys: this.surveys.found, promised, items, shared, otherBuilds };
  }
}

const refuseChange = (): never => {
  throw new TypeError("what a rule looks at cannot be changed");
};

/** A map that notes what is looked up in it. */
export class TracedMap<V> implements ReadonlyMap<string, V> {
  readonly #map: ReadonlyMap<string, V>;
  readonly #names: Pick<Names, "add" | "addEvery">;

  constructor(map: ReadonlyMap<string, V>, names: Pick<Names, "add" | "addEvery">) {
    this.#map = map;
    this.#names = names;
  }

  get(name: string): V | undefined {
    this.#names.add(name);
    return this.#map.get(name);
  }

  has(name: string): boolean {
    this.#names.add(name);
    return this.#map.has(name);
  }

  get #whole(): ReadonlyMap<string, V> {
    this.#names.addEvery();
    return this.#map;
  }

  get size(): number {
    return this.#whole.size;
  }

  forEach(each: (value: V, key: string, map: ReadonlyMap<string, V>) => void): void {
    for (const [key, value] of this.#whole) each(value, key, this);
  }

  entries(): MapIterator<[string, V]> {
    return this.#whole.entries();
  }

  keys(): MapIterator<string> {
    return this.#whole.keys();
  }

  values(): MapIterator<V> {
    return this.#whole.values();
  }

  [Symbol.iterator](): MapIterator<[string, V]> {
    return this.#whole.entries();
  }

  /** A plugin in JavaScript may try. @throws TypeError */
  readonly set = refuseChange;
  readonly delete = refuseChange;
  readonly clear = refuseChange;
}

/** Whether two lists of bookings say the same. */
export const samePromises = (one: readonly Promised[], other: readonly Promised[]): boolean =>
  one === other || JSON.stringify(one) === JSON.stringify(other);
