export { assignCircuits, type CircuitRoom, type CircuitSearch, roomFor } from "./search/assign-circuits.js";
export { type CableOrder, cableOrders } from "./search/cable-order.js";
export { divide } from "./search/divide.js";
export { cellsOf, distance, type GridCell, type Pitch } from "./search/grid.js";
export { hangSets } from "./search/hang-sets.js";
export { type Extent, pairs, type Shape, shapes, suits } from "./search/shapes.js";
export { type LengthsTaken, takeLengths } from "./search/take-lengths.js";
export { buyTogether, type Needs, type Purchase, packed, peakOf, type WishOptions } from "./search/together.js";
