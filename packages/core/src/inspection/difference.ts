import { isThere } from "../document/body/links.js";
import type { Booked } from "../model/shared/use.js";
import type { Promised } from "../model/stock/bookings.js";
import { chainFor } from "../standard/chain.js";
import type { DocumentEntry } from "./record.js";
import type { Snapshot } from "./snapshot.js";
import { type Dependencies, samePromises } from "./trace.js";

/** Result of judging one document, as it is kept: plain data. */
export interface KeptResult {
  readonly entry: DocumentEntry;
  readonly dependencies: Dependencies;
  /** The name it gives its build. */
  readonly name: string;
}

/** A result that is kept, and the state of the repository it holds for. */
export interface Kept {
  readonly result: KeptResult;
  readonly state: Snapshot;
}

const sameList = (one: readonly string[] = [], other: readonly string[] = []): boolean =>
  one.length === other.length && one.every((each, index) => each === other[index]);

/** Names under which two maps say different things. */
function differing<V>(one: ReadonlyMap<string, V>, other: ReadonlyMap<string, V>, same: (a: V, b: V) => boolean) {
  const names = new Set<string>();
  if (one === other) return names;
  for (const [name, value] of one) {
    const found = other.get(name);
    if (found === undefined || !same(value, found)) names.add(name);
  }
  for (const name of other.keys()) if (!one.has(name)) names.add(name);
  return names;
}

function promisesByLot({ promises }: Snapshot): ReadonlyMap<string, readonly Promised[]> {
  const lots = new Map<string, Promised[]>();
  for (const each of promises) lots.set(each.lot, [...(lots.get(each.lot) ?? []), each]);
  return lots;
}

const sameBookings = (one: readonly Booked[], other: readonly Booked[]): boolean =>
  one.length === other.length &&
  one.every((each, index) => each === other[index] || JSON.stringify(each) === JSON.stringify(other[index]));

/** Guesses and bounds of the catalogue, as a text to compare. */
const unsureIn = ({ catalogue }: Snapshot): string =>
  JSON.stringify(
    [...catalogue.parts.values()].map(({ name, unsure }) => [name, unsure]).filter(([, all]) => all?.length),
  );

/** What is different between two states of a repository, to tell whose results still hold. */
export class SnapshotDifference {
  readonly #parts: ReadonlySet<string>;
  readonly #catalogue: boolean;
  /** What rests on a guess or a bound of the catalogue is looked for in every document. */
  readonly #unsure: boolean;
  /** Whatever does not hold may follow from a mistake of the catalogue or the holdings. */
  readonly #mistaken: boolean;
  readonly #lots: ReadonlySet<string>;
  readonly #stock: boolean;
  readonly #items: ReadonlySet<string>;
  readonly #anyItem: boolean;
  readonly #days: boolean;
  readonly #promised: ReadonlySet<string>;
  readonly #surveys: ReadonlySet<string>;

  constructor(
    private readonly was: Snapshot,
    private readonly is: Snapshot,
  ) {
    const [parts, others] = [was.catalogue.parts, is.catalogue.parts];
    this.#parts = differing(parts, others, (one, other) => one === other);
    // Whoever goes through the catalogue may see its order, too.
    this.#catalogue = parts !== others && (this.#parts.size > 0 || !sameList([...parts.keys()], [...others.keys()]));
    this.#unsure = was.catalogue !== is.catalogue && unsureIn(was) !== unsureIn(is);
    this.#mistaken =
      (was.catalogue !== is.catalogue && [was, is].some(({ catalogue }) => catalogue.mistakes.size > 0)) ||
      (was.stock !== is.stock && [was, is].some(({ stock }) => stock.mistakes.size > 0));
    const [lots, next] = [was.stock.lots, is.stock.lots];
    this.#lots = differing(lots, next, (one, other) => JSON.stringify(one) === JSON.stringify(other));
    this.#stock = lots !== next && (this.#lots.size > 0 || !sameList([...lots.keys()], [...next.keys()]));
    const [surveys, later] = [was.surveys.byName, is.surveys.byName];
    // The line a value stands at is told with it, so what says the same elsewhere in the file is another survey.
    this.#surveys = differing(surveys, later, (one, other) => one === other);
    const [items, now] = [was.stock.items, is.stock.items];
    this.#items = differing(items, now, (one, other) => JSON.stringify(one) === JSON.stringify(other));
    this.#anyItem = items !== now && (this.#items.size > 0 || !sameList([...items.keys()], [...now.keys()]));
    this.#days = JSON.stringify(was.stock.days) !== JSON.stringify(is.stock.days);
    this.#promised =
      was.promises === is.promises ? new Set() : differing(promisesByLot(was), promisesByLot(is), samePromises);
  }

  /** Whether the result of a document may be another one now. @throws StandardError when house standards cannot be used */
  affects(path: string, { dependencies, name }: KeptResult): boolean {
    const { was, is } = this;
    if (!is.has(path) || was.sourceOf(path) !== is.sourceOf(path) || dependencies.otherBuilds) return true;
    if (this.#mistaken || this.#unsure || this.#days) return true;
    if (was.names !== is.names && !sameList(was.names.get(name), is.names.get(name))) return true;
    return this.#standardsDiffer(path) || this.#lookedAt(path, dependencies);
  }

  #standardsDiffer(path: string): boolean {
    if (this.was.standards === this.is.standards) return false;
    // A waiver may name any rule there is.
    if (!sameList(this.was.prepared.ids, this.is.prepared.ids)) return true;
    const [before, now] = [chainFor(this.was.standards, path), chainFor(this.is.standards, path)];
    return before.length !== now.length || before.some((each, index) => each !== now[index]);
  }

  #lookedAt(
    path: string,
    { paths, everyPath, papers, parts, lots, promised, surveys, items, shared }: Dependencies,
  ): boolean {
    const { was, is } = this;
    if (papers && !sameList(was.files.papers, is.files.papers)) return true;
    const any = (names: readonly string[] | "every", differ: ReadonlySet<string>, whole: boolean): boolean =>
      names === "every" ? whole : names.some((name) => differ.has(name));
    if (any(parts, this.#parts, this.#catalogue) || any(lots, this.#lots, this.#stock)) return true;
    if (any(surveys, this.#surveys, this.#surveys.size > 0)) return true;
    if (any(promised, this.#promised, this.#promised.size > 0)) return true;
    if (any(items, this.#items, this.#anyItem)) return true;
    if (
      was.ledger !== is.ledger &&
      shared.some(({ key, stay }) => !sameBookings(was.ledger.on(key, stay, path), is.ledger.on(key, stay, path)))
    )
      return true;
    if (was.paths === is.paths) return false;
    return everyPath
      ? !sameList(was.paths, is.paths)
      : Object.entries(paths).some(([target, there]) => isThere(is.paths, target) !== there);
  }
}
