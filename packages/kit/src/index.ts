/**
 * What the author of a rule needs, on one page:
 *
 * - `rule`, `repositoryRule`: declare a rule over one document, or over the whole repository; `plugin` puts rules
 *   together with the version of the kit they are written for.
 * - `atMost`, `atLeast`, `within`, `agrees`, `is`, `open`: what a rule yields, one for each thing it looks at;
 *   `about` says which document it is about in a rule over the repository.
 * - `mends` of a check: changes of the document that would put it right, for `plumbmark mend` and editors.
 * - `quantity`, `quantityOf`: a limit of the author's own. `sum`, `times`, `leastOf`, `greatestOf`, `formula`: values from
 *   values, with their working. `counted`, `tabled`, `assumed`, `missing`: a value with where it comes from.
 * - `written`, `isNothingWritten`, `person`: whether a text says anything, and whom it names. A placeholder says nothing;
 *   nor does `none` where `affirmed` asks for something that has to be there.
 * - The types of the model: `Build` with its faces, circuits, runs, chains, bars and hangs; `Repository` with all builds.
 *
 * `@plumbmark/kit/calc` has every formula and table there is; `@plumbmark/kit/tryout` tries a rule out.
 */
export {
  assumed,
  counted,
  formula,
  greatestOf,
  type Kind,
  type Known,
  leastOf,
  type Missing,
  missing,
  type SourceId,
  sources,
  sum,
  tabled,
  times,
  type Value,
} from "@plumbmark/calc";
export type {
  AssemblyPart,
  Bar,
  BarCases,
  Booked,
  Build,
  Cable,
  Chain,
  Circuit,
  End,
  Face,
  Hang,
  InspectedItem,
  Joint,
  Level,
  Lot,
  LotUse,
  Mend,
  Panel,
  Part,
  RawCheck,
  Repository,
  Rule,
  RuleContext,
  Run,
  Setting,
  SettingDefinition,
  SharedThing,
  Thing,
  Turns,
  Words,
  WorstDay,
} from "@plumbmark/core";
export {
  affirmed,
  dayAfter,
  inspectionDays,
  isNothingWritten,
  isPlaceholder,
  isToCome,
  may,
  monthsAfter,
  nobodyIn,
  oneAndTheSame,
  type Person,
  person,
  samePerson,
  turnsAllowed,
  whoMay,
  written,
} from "@plumbmark/core";
export { about, agrees, atLeast, atMost, type Between, type Comparison, is, open, within } from "./checks.js";
export { KIT, type Plugin, plugin } from "./plugin.js";
export { type KindOf, quantity, quantityOf } from "./quantity.js";
export { type Given, type RepositoryRuleDefinition, type RuleDefinition, repositoryRule, rule } from "./rule.js";
