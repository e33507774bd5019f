export type { Approval } from "./approval/approval.js";
export { changesBetween } from "./approval/changes.js";
export { type ApprovalText, withApproval } from "./approval/write.js";
export { usualUnits } from "./document/advice.js";
export { isThere } from "./document/body/links.js";
export { type Markdown, plainText, readMarkdown } from "./document/body/markdown.js";
export { type Section, sectionsOf } from "./document/body/sections.js";
export { dayAfter, isToCome } from "./document/days.js";
export { fieldsAt, fieldsUnder } from "./document/field.js";
export { resolved, type SchemaNode, valueWords } from "./document/key-words.js";
export { LIKE_IN_BUILD, LIKE_IN_SURVEY, withLike } from "./document/like.js";
export type { Mistake } from "./document/mistake.js";
export { choices, nearest } from "./document/nearest.js";
export { affirmed, asRead, isNothingWritten, isPlaceholder, written } from "./document/nothing-written.js";
export { nobodyIn, type Person, person, samePerson } from "./document/person.js";
export type { Place } from "./document/place.js";
export { placeName } from "./document/place-name.js";
export { readQuantities } from "./document/quantities.js";
export { safeText, UNSAFE_TEXT } from "./document/safe-text.js";
export { validate } from "./document/validate.js";
export type { ValueChange } from "./document/yaml/overlay.js";
export { readWholeYaml, rememberYaml } from "./document/yaml/whole-yaml.js";
export { type Data, type Placed, readYaml } from "./document/yaml/yaml.js";
export { type Found, type FoundGap, type FoundMistake, foundIn, gravest } from "./findings/found.js";
export { TURNS, type Turns } from "./findings/turns.js";
export { type WhereFound, whereFound, whereFoundWords } from "./findings/where-found.js";
export * as schemas from "./generated/schemas.js";
export type { Inspected } from "./inspection/inspect-document.js";
export { contractProblems } from "./inspection/judging/contract.js";
export { workingEntries } from "./inspection/judging/judge.js";
export { worstOf } from "./inspection/judging/margin.js";
export {
  areSound,
  type PluginResults,
  pluginRules,
  type RuleResult,
  resultOn,
  ruleWithResults,
  type StatedRule,
  unusedPlugins,
} from "./inspection/judging/plugin-results.js";
export type { RawCheck, Rule, RuleContext, Sense, Thing, Words } from "./inspection/judging/rule.js";
export { StandardError } from "./inspection/judging/settings.js";
export type { OpenOptions } from "./inspection/open-options.js";
export {
  type InspectedDocument,
  type OpenRepository,
  openRepository,
} from "./inspection/open-repository.js";
export type { InspectOptions } from "./inspection/prepare.js";
export {
  type AgainstEntry,
  type ApprovalEntry,
  type CheckEntry,
  type Counts,
  type DocumentEntry,
  type InspectionRecord,
  type MendEntry,
  type Outcome,
  type QuantityEntry,
  type RangeEntry,
  type StandardEntry,
  type Totals,
  totalsOf,
  type Verdict,
  verdictOf,
  type WaitsForEntry,
  type WaiverEntry,
  type WorkingEntry,
} from "./inspection/record.js";
export { knownOutline, pathsOf } from "./inspection/snapshot.js";
export { type ShortLine, shortfallTable } from "./inspection/together/shortfall.js";
export { bookedIn, ledgerOf } from "./inspection/together/uses.js";
export { type Answers, type Dependencies, Trace } from "./inspection/trace.js";
export { failuresAt, type JudgedDocument, useNotice } from "./inspection/use-notice.js";
export { type WorkedValue, workedValues } from "./inspection/workings.js";
export type { Mend } from "./mends/mend.js";
export { type EndedApproval, type MendedFile, type MendedRepository, mendRepository } from "./mends/mend-repository.js";
export { isMendable } from "./mends/mendable.js";
export type { MadeMend } from "./mends/mended-text.js";
export { Build } from "./model/build.js";
export type { Cable, End } from "./model/cabling/cable.js";
export type { Joint } from "./model/cabling/joints.js";
export { type Socket, socketAt, sockets, turned } from "./model/cabling/sockets.js";
export type { Chain } from "./model/data/chain.js";
export { type Cell, cellName, readCells, rowName } from "./model/faces/cells.js";
export type { Face } from "./model/faces/face.js";
export type { KindOfPanel } from "./model/faces/face-kinds.js";
export type { Panel } from "./model/faces/panels.js";
export { stretchAsWritten } from "./model/faces/stretch.js";
export { turnsAllowed, turnsStated } from "./model/faces/turns.js";
export type { Lifting } from "./model/lifting/lifting.js";
export type { Hop, Station } from "./model/picture/picture-path.js";
export type { Circuit } from "./model/power/circuit.js";
export type { Run } from "./model/power/run.js";
export { Repository } from "./model/repository.js";
export type { AssemblyPart } from "./model/rigging/assembly.js";
export type { Bar } from "./model/rigging/bar.js";
export type { BarCases, WorstCase } from "./model/rigging/cases.js";
export type { Hang } from "./model/rigging/hang.js";
export type { Leg } from "./model/rigging/leg.js";
export { withWay } from "./model/shared/days.js";
export type { Free, FreeCount, FreeQuestion, Taken } from "./model/shared/free.js";
export { Ledger } from "./model/shared/ledger.js";
export type { OtherShare, SharedThing, WorstDay } from "./model/shared/shared-thing.js";
export {
  type Booked,
  type SharedKind,
  type SharedName,
  type SharedUse,
  sharedKey,
  type UseEntry,
} from "./model/shared/use.js";
export { type WorstUse, worstTogether } from "./model/shared/worst.js";
export { type Promised, promisedOf, type Stay, stayOf } from "./model/stock/bookings.js";
export { type InspectedItem, inspectionDays, monthsAfter } from "./model/stock/inspected.js";
export type { LotUse } from "./model/stock/lot-use.js";
export { type BuildsTogether, buildsTogether } from "./model/stock/together.js";
export { type PointUsed, Venue, venueKey } from "./model/venue/venue.js";
export { ownRules } from "./own-rules/own-rules.js";
export { isDevice } from "./repository/device.js";
export {
  asStock,
  type DocumentFile,
  type FolderStandard,
  type OtherDocument,
  type Outline,
  type RepositoryFiles,
  type SourceFile,
  stockFiles,
} from "./repository/files.js";
export { type Act, type HouseStandardSettings, readHouseStandard } from "./repository/house-standard.js";
export { documentKind, isBuildDocument } from "./repository/is-build-document.js";
export type { Item, ItemLength, ItemPiece } from "./repository/items.js";
export { type Money, minorUnits, moneyText, readMoney, sumMoney, timesMoney } from "./repository/money.js";
export { writtenKey } from "./repository/old-keys.js";
export { outlineOf } from "./repository/outline.js";
export type { Catalogue, Part } from "./repository/parts.js";
export { priceOf } from "./repository/price.js";
export type { FileRole } from "./repository/replace-file.js";
export { type DaysAway, type Lot, type Stock, soundIn } from "./repository/stock.js";
export { chainFor, mergedStandard, readStandards, type StandardChain, type Standards } from "./standard/chain.js";
export type { StandardFile } from "./standard/file.js";
export { bySupport, type From, type InForce, inForce, type PlacedValue } from "./standard/in-force.js";
export { LEVELS, SUPPORTS, type Support, topicOf } from "./standard/levels.js";
export {
  fromText,
  type ListedRule,
  type ListedValue,
  type ListedValues,
  listRule,
  settingText,
} from "./standard/listing.js";
export { currentRule } from "./standard/old-rules.js";
export { may, oneAndTheSame, whoMay } from "./standard/people.js";
export type { Level, Setting, SettingDefinition } from "./standard/setting.js";
export { checkStandards, openStandards, outdated } from "./standard/use.js";
export { tableCsv } from "./takeoff/csv.js";
export { labeller } from "./takeoff/labels.js";
export { isSchedule, type ScheduleName, scheduleNamed, scheduleNames, scheduleTitles } from "./takeoff/names.js";
export { type Prices, pricesOf } from "./takeoff/prices.js";
export { schedule } from "./takeoff/schedules.js";
export {
  columnHeading,
  NOT_STATED,
  type ScheduleCell,
  type ScheduleColumn,
  type ScheduleTable,
  withoutEmpty,
} from "./takeoff/table.js";
export { tableMarkdown } from "./takeoff/table-markdown.js";
export type { Contradiction } from "./venue/completion.js";
export {
  readSurvey,
  readSurveys,
  type Survey,
  type Surveys,
  surveyData,
  surveyKind,
  surveyLine,
  surveyNames,
  surveyWords,
} from "./venue/survey.js";
export { between, endsOf, pointOf, type SurveyedPlace, surveyValue, type Way, wayBetween } from "./venue/ways.js";
