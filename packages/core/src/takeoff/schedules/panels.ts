import type { Value } from "@plumbmark/calc";
import { counted } from "@plumbmark/calc";
import type { Build } from "../../model/build.js";
import type { Chain } from "../../model/data/chain.js";
import { type Cell, cellName } from "../../model/faces/cells.js";
import type { Face } from "../../model/faces/face.js";
import type { Placement } from "../../model/picture/placement.js";
import type { Run } from "../../model/power/run.js";
import { type ColumnOf, NOT_STATED, type ScheduleEntry } from "../table.js";

interface On<Line> {
  readonly line: Line;
  /** Place in cable order, from 1. */
  readonly order: number;
}

/** A panel in its cell, with what feeds it and where it stands on the raster. */
export interface PanelLine {
  readonly face: Face;
  readonly cell: Cell;
  readonly runs: readonly On<Run>[];
  readonly chains: readonly On<Chain>[];
  readonly left: Value | undefined;
  readonly top: Value | undefined;
}

function byPanel<Line extends Run | Chain>(lines: readonly Line[]): ReadonlyMap<string, readonly On<Line>[]> {
  const found = new Map<string, On<Line>[]>();
  for (const line of lines)
    for (const [index, { name }] of (line.panels ?? []).entries()) {
      const on = { line, order: index + 1 };
      const before = found.get(name);
      if (before) before.push(on);
      else found.set(name, [on]);
    }
  return found;
}

/** First pixel of a panel along one side of the raster; undefined where the face is scaled or its place is not told. */
function pixelAt(placement: Placement | undefined, side: "x" | "y", cell: Cell): Value | undefined {
  const part = placement?.partOf(cell);
  if (!placement || !part?.corner || placement.scaled) return undefined;
  const { face } = placement;
  const [along, place] = side === "x" ? (["columns", cell.column] as const) : (["rows", cell.row] as const);
  const size = face.alike(face.pixelsPath(side === "x" ? "across" : "down"), "pixels", "pixels");
  const before = place - (part.cut?.[along]?.first ?? 0);
  return size.known ? counted(part.corner[side] + before * size.value, "first pixel", "pixels") : size;
}

/** Every panel of every face, row by row from the top left as the audience sees it. */
export function panelLines(build: Build): readonly PanelLine[] {
  const [runs, chains] = [byPanel(build.runs), byPanel(build.chains)];
  return build.faces.flatMap((face) => {
    const placement = build.picture.placements.find((each) => each.face === face);
    return face.cells.map((cell) => {
      const name = `${face.name} ${cellName(cell)}`;
      return {
        face,
        cell,
        runs: runs.get(name) ?? [],
        chains: chains.get(name) ?? [],
        left: pixelAt(placement, "x", cell),
        top: pixelAt(placement, "y", cell),
      };
    });
  });
}

/** What is said of each line a panel is on, alike ones together; a panel on none has nothing stated. */
const each = <Line>(lines: readonly On<Line>[], say: (on: On<Line>) => string | number | undefined): ScheduleEntry =>
  lines.length === 0 ? NOT_STATED : [...new Set(lines.map((on) => say(on) ?? NOT_STATED))].join(" and ");

export const panelColumns: readonly ColumnOf<PanelLine>[] = [
  { name: "Face", of: ({ face }) => face.name },
  { name: "Cell", of: ({ cell }) => cellName(cell) },
  { name: "Circuit", of: ({ runs }) => each(runs, ({ line }) => line.circuit?.name) },
  { name: "Run", of: ({ runs }) => each(runs, ({ line }) => line.name) },
  { name: "Order on run", of: ({ runs }) => each(runs, ({ order }) => order) },
  { name: "Chain", of: ({ chains }) => each(chains, ({ line }) => line.name) },
  { name: "Order on chain", of: ({ chains }) => each(chains, ({ order }) => order) },
  { name: "Port", of: ({ chains }) => each(chains, ({ line }) => line.port) },
  { name: "Back-up port", of: ({ chains }) => each(chains, ({ line }) => line.backUpPort ?? "none") },
  { name: "First pixel across", kind: "pixels", of: ({ left }) => left },
  { name: "First pixel down", kind: "pixels", of: ({ top }) => top },
];
