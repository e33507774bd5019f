import type { Mistake } from "../../document/mistake.js";
import type { CheckEntry } from "../../inspection/record.js";
import type { HouseStandardSettings } from "../../repository/house-standard.js";
import type { Stock } from "../../repository/stock.js";
import type { StandardFile } from "../../standard/file.js";
import type { Survey } from "../../venue/survey.js";
import type { Booked, SharedName } from "../shared/use.js";
import type { Promised, Stay } from "../stock/bookings.js";

/** What a build is given of the repository it belongs to. */
export interface BuildContext {
  readonly file: string;
  readonly standard: HouseStandardSettings;
  /** The house standards it is judged by, the root's first; `standard` is what they come to. */
  readonly standards: readonly StandardFile[];
  readonly stock: Stock;
  /** Surveys, by the name of the venue. */
  readonly surveys: ReadonlyMap<string, Survey>;
  /** Files of the repository that give the same name to their build, this one among them. */
  readonly sameName: readonly string[];
  /** Paths of every file that is read, from the root. */
  readonly files: readonly string[];
  /** The same for links alone: which of them a document depends on follows from where its links lead. */
  readonly linkTargets: readonly string[];
  /** Paths of letters and other papers, which nobody reads; undefined where nobody looked for them. */
  readonly papers: readonly string[] | undefined;
  readonly today: string;
  /** What all documents of the repository promise out of the stock. */
  readonly promises: readonly Promised[];
  /** What this document promises out of the stock. */
  readonly ownPromises: readonly Promised[];
  /** What all documents promise of one lot. */
  readonly promisedOf: (lot: string) => readonly Promised[];
  /** What documents of the repository use of something on any of some days; those without days are always there. */
  readonly sharing: (thing: SharedName, stay: Stay | undefined) => readonly Booked[];
  /** Ids of the rules in force; empty when only values are computed. */
  readonly rules: readonly string[];
  /** What rules found on this document so far, before waivers, by rule. The engine adds to it and asks about waivers last. */
  readonly findings: Map<string, readonly CheckEntry[]>;
  /** Mistakes found before the model was made. */
  readonly mistakes: readonly Mistake[];
}
