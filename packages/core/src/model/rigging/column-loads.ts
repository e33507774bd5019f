import { counted, type Known, leastOf, missing, sum, tabled, type Value } from "@plumbmark/calc";
import type { Face } from "../faces/face.js";
import { kindMass } from "../faces/face-kinds.js";
import type { Bar } from "./bar.js";
import type { CarriedFace } from "./bar-loads.js";

/** A column of a face on a bar, with where it lies on the bar where that can be told. */
interface Column {
  readonly carried: CarriedFace;
  readonly index: number;
  readonly from: number;
  readonly to: number;
}

/** Every column on a bar; undefined while the places cannot be told. */
function columnsOn(bar: Bar): readonly Column[] | undefined {
  const all: Column[] = [];
  for (const carried of bar.carries) {
    const { face, from, columns } = carried;
    const width = face.panelWidth;
    if (!from.known || !width.known) return undefined;
    for (const [place, index] of columns.entries()) {
      const left = from.value + place * width.value;
      all.push({ carried, index, from: left, to: left + width.value });
    }
  }
  return all;
}

const NEAR = 1e-6;

/** Columns that hang from the same place of the bar, one face below or behind another: what a point holds counts together. */
function together(bar: Bar, carried: CarriedFace): readonly (readonly Column[])[] | undefined {
  const all = columnsOn(bar);
  if (!all) return undefined;
  return all
    .filter((each) => each.carried === carried)
    .map((own) => all.filter((other) => other.from < own.to - NEAR && other.to > own.from + NEAR));
}

/** Panels of one column, those beyond a gap left to the face's own count. */
const panelsIn = (face: Face, column: number): number =>
  face.cells.reduce((count, cell) => count + (cell.column === column ? 1 : 0), 0);

/** Most panels that hang under one place of the bar: of this face and of every other that hangs there. */
export function deepestUnder(bar: Bar, carried: CarriedFace): Value<"count"> {
  const groups = together(bar, carried);
  if (!groups) return missing("count", { path: carried.path, what: "place of the faces on the bar", of: bar.label });
  const depths = groups.map((group) =>
    group.reduce((total, each) => total + panelsIn(each.carried.face, each.index), 0),
  );
  return counted(Math.max(0, ...depths), "panels under one place of the bar");
}

/** Whether something else hangs under the same columns. */
export const isShared = (bar: Bar, carried: CarriedFace): boolean =>
  (together(bar, carried) ?? []).some((group) => group.some((each) => each.carried !== carried));

/** What the heaviest column weighs with its share of what the face carries and its jumpers, and all else that hangs there. */
export function heaviestColumn(bar: Bar, carried: CarriedFace): Value<"mass"> {
  const groups = together(bar, carried);
  if (!groups || groups.length === 0)
    return missing("mass", { path: carried.path, what: "place of the face on the bar", of: bar.label });
  const needed = bar.carries.flatMap(({ face }) => [...face.kinds.map((kind) => kindMass(face, kind)), ...face.extras]);
  const cables = bar.cables.map(({ mass }) => mass);
  const gap = [...needed, ...cables].find((each) => !each.known);
  if (gap && !gap.known) return missing("mass", ...gap.gaps);
  const loads = groups.map((group) => group.reduce((total, each) => total + columnMass(bar, each), 0));
  const worst = Math.max(...loads);
  return { ...(tabled(worst, "mass", "arithmetic", "the heaviest column with what hangs on it") as Known<"mass">) };
}

/** Panels, share of extras, jumpers, and the feeds and returns that end in it. */
function columnMass(bar: Bar, { carried, index }: Column): number {
  const { face } = carried;
  const panels = face.kinds.reduce(
    (total, kind) => total + (kind.perColumn[index] ?? 0) * (kindMass(face, kind) as Known).value,
    0,
  );
  const extras = (sum(face.extras, "mass") as Known).value / face.columns;
  const cables = bar.cables.flatMap(({ points, spread }) => [...points, ...spread]);
  const own = cables.filter((each) => each.carried === carried && each.column === index);
  return panels + extras + own.reduce((total, { load }) => total + load, 0);
}

/** The least the makers of all panels that hang there let hang below one another. */
export function leastLimit(bar: Bar, carried: CarriedFace): Value<"count"> {
  const faces = new Set((together(bar, carried) ?? []).flat().map((each) => each.carried.face));
  const limits = [...(faces.size > 0 ? faces : [carried.face])].map((face) =>
    face.makersLimit("flown-below", "most panels one under another"),
  );
  return limits.length === 1
    ? (limits[0] as Value<"count">)
    : leastOf(limits, "count", "most panels one under another");
}
