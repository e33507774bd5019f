import type { HouseStandardSettings } from "../repository/house-standard.js";
import type { Catalogue, Part } from "../repository/parts.js";
import type { Lot, Stock } from "../repository/stock.js";
import type { Build } from "./build.js";

/** Everything a docs repository holds, for a rule that looks further than one document. */
export class Repository {
  /** The house standard in force. */
  readonly standard: HouseStandardSettings;
  /** The parts catalogue, by name. */
  readonly parts: ReadonlyMap<string, Part>;
  /** The stock list, by the name of the lot. */
  readonly lots: ReadonlyMap<string, Lot>;
  /** Paths of every file that is read, from the root. */
  readonly files: readonly string[];
  /** The day of the inspection, `2027-03-05`. */
  readonly today: string;
  readonly #read: () => readonly Build[];
  #builds: readonly Build[] | undefined;

  constructor(
    context: {
      readonly standard: HouseStandardSettings;
      readonly catalogue: Catalogue;
      readonly stock: Stock;
      readonly files: readonly string[];
      readonly today: string;
    },
    read: () => readonly Build[],
  ) {
    this.standard = context.standard;
    this.parts = context.catalogue.parts;
    this.lots = context.stock.lots;
    this.files = context.files;
    this.today = context.today;
    this.#read = read;
  }

  /** Every build of the repository, drafts included. Read when first asked for: most rules need only their own. */
  get builds(): readonly Build[] {
    this.#builds ??= this.#read();
    return this.#builds;
  }
}
