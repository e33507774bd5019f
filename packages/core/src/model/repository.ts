import type { HouseStandardSettings } from "../repository/house-standard.js";
import type { Part } from "../repository/parts.js";
import type { Lot } from "../repository/stock.js";
import type { Survey } from "../venue/survey.js";
import type { Build } from "./build.js";

/** What a repository is made of, besides its builds. */
export interface RepositoryContents {
  readonly standard: HouseStandardSettings;
  readonly parts: ReadonlyMap<string, Part>;
  readonly lots: ReadonlyMap<string, Lot>;
  readonly surveys: ReadonlyMap<string, Survey>;
  readonly files: readonly string[];
  readonly today: string;
}

/** Everything a docs repository holds, for a rule that looks further than one document. */
export class Repository {
  readonly #contents: RepositoryContents;
  readonly #read: () => readonly Build[];

  constructor(contents: RepositoryContents, read: () => readonly Build[]) {
    this.#contents = contents;
    this.#read = read;
  }

  /** The house standard in force. */
  get standard(): HouseStandardSettings {
    return this.#contents.standard;
  }

  /** The parts catalogue, by name. */
  get parts(): ReadonlyMap<string, Part> {
    return this.#contents.parts;
  }

  /** The stock list, by the name of the lot. */
  get lots(): ReadonlyMap<string, Lot> {
    return this.#contents.lots;
  }

  /** Surveys, by the name of the venue. */
  get surveys(): ReadonlyMap<string, Survey> {
    return this.#contents.surveys;
  }

  /** Paths of every file that is read, from the root. */
  get files(): readonly string[] {
    return this.#contents.files;
  }

  /** The day of the inspection, `2027-03-05`. */
  get today(): string {
    return this.#contents.today;
  }

  /** Every build of the repository, drafts included. Read when first asked for: most rules need only their own. */
  get builds(): readonly Build[] {
    return this.#read();
  }
}
