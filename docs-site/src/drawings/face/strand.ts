import type { Cell, Face } from "@plumbmark/core";
import type { DrawnCell as TableCell } from "../shared/table.js";

/** A run or a chain as it goes over one face. */
export interface Strand {
  readonly sort: "run" | "chain";
  readonly name: string;
  /** In cable order; undefined when it is not written down. */
  readonly cells: readonly Cell[] | undefined;
  /** Which colour and hatch its cells have: that of its circuit, or its own. */
  readonly group: number | undefined;
  /** Which line it has. */
  readonly number: number;
  /** What is written where its feed enters, first line first. */
  readonly enters: readonly string[];
  /** What is written where it comes back; undefined for one that ends at its last panel. */
  readonly returns?: readonly string[];
  /** Its row of the legend. */
  readonly legend: readonly TableCell[];
}

export interface Layer {
  readonly name: "power" | "data";
  readonly what: string;
  readonly strands: readonly Strand[];
  readonly header: readonly string[];
  /** What every panel should be on: one run, one chain. */
  readonly on: string;
}

const name = ({ row, column }: Cell): string => `${row},${column}`;

/** How many strands each panel of the face is on. */
export function timesOn(face: Face, strands: readonly Strand[]): ReadonlyMap<string, number> {
  const times = new Map(face.cells.map((cell) => [name(cell), 0]));
  for (const cell of strands.flatMap(({ cells }) => cells ?? []))
    times.set(name(cell), (times.get(name(cell)) ?? 0) + 1);
  return times;
}

export const countOf = (times: ReadonlyMap<string, number>, cell: Cell): number => times.get(name(cell)) ?? 0;
