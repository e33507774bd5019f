import type { Mistake } from "../document/mistake.js";
import type { BuildContext } from "../model/reading/build-context.js";
import { aside, LOOKED_AT, note } from "../model/reading/reads.js";
import type { RepositoryContents } from "../model/repository.js";
import { type Booked, type SharedName, sharedKey } from "../model/shared/use.js";
import { type Promised, promisedBy, type Stay } from "../model/stock/bookings.js";
import type { HouseStandardSettings } from "../repository/house-standard.js";
import type { Part } from "../repository/parts.js";
import type { Lot, Stock } from "../repository/stock.js";
import { chainFor, mergedStandard, type StandardChain } from "../standard/chain.js";
import type { Survey } from "../venue/survey.js";
import type { CheckEntry } from "./record.js";
import type { Snapshot } from "./snapshot.js";
import { type Trace, TracedMap } from "./trace.js";

/** What a build is given of its repository; what is looked at is noted. */
export class TracedContext implements BuildContext {
  readonly standard: HouseStandardSettings;
  readonly standards: StandardChain;
  readonly stock: Stock;
  readonly surveys: ReadonlyMap<string, Survey>;
  readonly today: string;
  readonly #findings = new Map<string, readonly CheckEntry[]>();
  readonly #snapshot: Snapshot;
  readonly #trace: Trace;

  constructor(
    snapshot: Snapshot,
    trace: Trace,
    readonly file: string,
    private readonly rulesInForce: () => readonly string[],
    /** The name it gives its build. */
    private readonly name: string,
    readonly mistakes: readonly Mistake[],
  ) {
    this.#snapshot = snapshot;
    this.#trace = trace;
    this.standards = chainFor(snapshot.standards, file);
    this.standard = mergedStandard(this.standards);
    const { lots, items } = snapshot.stock;
    this.stock = {
      ...snapshot.stock,
      lots: new TracedMap(lots, trace.lots),
      items: new TracedMap(items, trace.items),
    };
    this.surveys = new TracedMap(snapshot.surveys.byName, trace.surveys);
    this.today = snapshot.today;
  }

  get sameName(): readonly string[] {
    note(LOOKED_AT.names);
    return this.#snapshot.names.get(this.name) ?? [];
  }

  get rules(): readonly string[] {
    return this.rulesInForce();
  }

  get findings(): Map<string, readonly CheckEntry[]> {
    note(LOOKED_AT.passing);
    return this.#findings;
  }

  get files(): readonly string[] {
    this.#trace.everyPath = true;
    return this.#snapshot.paths;
  }

  get linkTargets(): readonly string[] {
    return this.#snapshot.paths;
  }

  get papers(): readonly string[] | undefined {
    this.#trace.papers = true;
    return this.#snapshot.files.papers;
  }

  get promises(): readonly Promised[] {
    note(LOOKED_AT.promises);
    this.#trace.promised.addEvery();
    return this.#snapshot.promises;
  }

  get ownPromises(): readonly Promised[] {
    note(LOOKED_AT.promises);
    return promisedBy(this.#snapshot.promises, this.file);
  }

  readonly promisedOf = (lot: string): readonly Promised[] => {
    note(LOOKED_AT.promises);
    this.#trace.promised.add(lot);
    return this.#snapshot.promisedOf(lot);
  };

  readonly sharing = (thing: SharedName, stay: Stay | undefined): readonly Booked[] => {
    const key = sharedKey(thing);
    this.#trace.addShared(key, stay);
    return aside(() => this.#snapshot.ledgerFor(this.file).on(key, stay, this.file));
  };
}

/** What rules on one document are given of the repository; what is looked at is noted. */
export class TracedContents implements RepositoryContents {
  readonly parts: ReadonlyMap<string, Part>;
  readonly lots: ReadonlyMap<string, Lot>;
  readonly surveys: ReadonlyMap<string, Survey>;

  constructor(
    private readonly snapshot: Snapshot,
    private readonly trace: Trace,
  ) {
    this.parts = new TracedMap(snapshot.catalogue.parts, trace.parts);
    this.lots = new TracedMap(snapshot.stock.lots, trace.lots);
    this.surveys = new TracedMap(snapshot.surveys.byName, trace.surveys);
  }

  get standard(): HouseStandardSettings {
    return this.snapshot.standard;
  }

  get files(): readonly string[] {
    this.trace.everyPath = true;
    return this.snapshot.paths;
  }

  get today(): string {
    return this.snapshot.today;
  }
}
