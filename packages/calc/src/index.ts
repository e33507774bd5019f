export * from "./connectors/index.js";
export * from "./face/index.js";
export { difference, greatestOf, leastOf, shareOf, sum, times } from "./formula/arithmetic.js";
export {
  type Definition,
  type Formula,
  formula,
  formulas,
  type Input,
  type Inputs,
} from "./formula/formula.js";
export { showSum } from "./formula/substitution.js";
export {
  assumed,
  assumedIn,
  assumedWithin,
  counted,
  type Gap,
  gapsOf,
  given,
  guessed,
  guessesIn,
  guessMark,
  type Known,
  type Missing,
  missing,
  type Origin,
  restingOn,
  type StatedIn,
  type Step,
  statedIn,
  tabled,
  type Value,
  workingOf,
} from "./formula/value.js";
export * from "./power/index.js";
export { awgArea, awgDiameter, awgName, awgNumber } from "./quantity/awg.js";
export { type Kind, kinds, siUnit } from "./quantity/kinds.js";
export { type Quantity, type Reading, readPair, readQuantity } from "./quantity/parse.js";
export { type Print, printer, printNumber, printQuantity, type System, unitFor } from "./quantity/print.js";
export { type Marked, marked, type Sure } from "./quantity/sure.js";
export { fromKept, toKept, type Unit, unitByCode, units, unitsOf } from "./quantity/units.js";
export * from "./register/index.js";
export * from "./rigging/index.js";
export * from "./signal/index.js";
export { type SourceId, sourceOf, sources } from "./sources/index.js";
export type { Source } from "./sources/source.js";
export * from "./stock/index.js";
export * from "./venue/index.js";
