import { formula } from "../formula/formula.js";

/** A panel's place in a face, counted from 0: row from the top, column from the audience's left. */
export interface GridPlace {
  readonly row: number;
  readonly column: number;
}

/** Sizes and offsets in metres. */
export interface PanelSize {
  readonly width: number;
  readonly height: number;
}

/** A point in metres, x to the right and y downward. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Centre of a cell, from the face's top-left corner. */
export const cellCentre = (place: GridPlace, size: PanelSize): Point => ({
  x: (place.column + 0.5) * size.width,
  y: (place.row + 0.5) * size.height,
});

/** Where a part does not say where its connectors are, they count as being at the centre of the panel. */
const CENTRE: Point = { x: 0, y: 0 };

/**
 * Sideways and upright distance in metres from the out connector of one panel to the in connector of the next;
 * `out` and `into` are measured from the panel's centre.
 */
export function stepBetween(
  from: GridPlace,
  to: GridPlace,
  size: PanelSize,
  out: Point = CENTRE,
  into: Point = CENTRE,
): Point {
  const one = cellCentre(from, size);
  const other = cellCentre(to, size);
  return { x: Math.abs(other.x + into.x - one.x - out.x), y: Math.abs(other.y + into.y - one.y - out.y) };
}

/** Whether two cells share an edge. */
export const areNeighbours = (one: GridPlace, other: GridPlace): boolean =>
  Math.abs(one.row - other.row) + Math.abs(one.column - other.column) === 1;

/** Length in metres of a path through cells in cable order, connector to connector. */
export function pathLength(places: readonly GridPlace[], size: PanelSize, out?: Point, into?: Point): number {
  let total = 0;
  for (const [index, place] of places.entries()) {
    const next = places[index + 1];
    if (!next) break;
    const step = stepBetween(place, next, size, out, into);
    total += Math.hypot(step.x, step.y);
  }
  return total;
}

/** Length in metres a jumper needs: straight from connector to connector, and slack for bending at both ends. */
export const jumperNeeded = formula({
  id: "face.jumper-needed",
  title: "Length a jumper needs",
  symbol: "L",
  kind: "length",
  inputs: {
    dx: { kind: "length", is: "sideways distance between the connectors", least: 0 },
    dy: { kind: "length", is: "upright distance between the connectors", least: 0 },
    s: { kind: "length", is: "slack", least: 0 },
  },
  expression: "√(dx² + dy²) + s",
  source: "geometry",
  validity: "a straight lay; a jumper led round a frame needs more",
  example: { given: { dx: 0.3, dy: 0.4, s: 0.1 }, gives: 0.6, within: 1e-12, from: "the 3-4-5 triangle" },
  compute: ({ dx, dy, s }) => Math.hypot(dx, dy) + s,
});
