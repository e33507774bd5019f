export type { Brief, PanelsOnOffer } from "./brief.js";
export type { Decision, Fallen } from "./decide/decision.js";
export { Desk, OutOfTime } from "./desk/desk.js";
export { type Buildable, canBuild, type PairOfFaces } from "./options/can-build.js";
export { chosen, trade } from "./options/choose.js";
export { type Cost, costOf, costText, type PricedPiece, type ToBuy } from "./options/cost.js";
export { type DraftAsk, type Drafted, draft, underNames } from "./options/draft.js";
export { judgedAgain } from "./options/judged-again.js";
export { dominates, MEASURES, type Measure } from "./options/measure.js";
export { notSaid } from "./options/not-said.js";
export type { Figure, Option, OutOfIt, Shortfall } from "./options/option.js";
export {
  buildableTable,
  comparedOptions,
  type DraftRecord,
  draftRecord,
  type OptionEntry,
  optionsTable,
  pairsTable,
} from "./options/record.js";
export { Shelf, type ShelfShape, type ShelfShapes } from "./options/shelf.js";
export { briefFor, freePath, type Start, unknownIn } from "./options/start.js";
export {
  type CountedPiece,
  type DraftedWish,
  drawnTogether,
  type PurchaseTogether,
  type TogetherResult,
} from "./options/together.js";
export { assignCircuits, type CircuitRoom, type CircuitSearch, roomFor } from "./search/assign-circuits.js";
export { type CableOrder, cableOrders } from "./search/cable-order.js";
export { divide } from "./search/divide.js";
export { type FoldedFace, type FoldPiece, fold, type PixelFace } from "./search/fold.js";
export { cellsOf, distance, type GridCell, type Pitch } from "./search/grid.js";
export { bestStations, worthAsking } from "./search/hang-sets.js";
export { type Extent, pairs, type Shape, shapes, suits } from "./search/shapes.js";
export { type LengthsTaken, takeLengths } from "./search/take-lengths.js";
export { buyTogether, type Needs, type Purchase, packed, peakOf, type WishOptions } from "./search/together.js";
export { readExtent } from "./wish/extent.js";
export type { KeptNames } from "./wish/keep-names.js";
export { type ChangedValue, changedFrom, type NotAlike, namesKept, type OtherSize, wishLike } from "./wish/like.js";
export { readWish, type WishFile } from "./wish/read-wish.js";
export type { Wish } from "./wish/wish.js";
export { cellsText } from "./write/cells.js";
export { lengthAsWritten } from "./write/length.js";
export { frontMatterText } from "./write/yaml.js";
