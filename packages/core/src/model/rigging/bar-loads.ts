import { type Known, type PointLoad, sum, times, type UniformLoad, type Value } from "@plumbmark/calc";
import type { Face } from "../faces/face.js";
import { kindMass, panelsMassOf } from "../faces/face-kinds.js";
import type { Bar } from "./bar.js";

/** A face, or some columns of it, on a bar. */
export interface CarriedFace {
  readonly path: string;
  readonly face: Face;
  /** Place on the bar of the left edge of the columns it carries. */
  readonly from: Value<"length">;
  /** Columns this bar carries, 0 at the audience's left; all of them when none are named. */
  readonly columns: readonly number[];
}

/** `1..4` → 0, 1, 2, 3. */
function columnsOf(face: Face, written: string | undefined): readonly number[] {
  const [first, last] = (written ?? `1..${face.columns}`).split("..").map(Number);
  return Array.from({ length: face.columns }, (_, column) => column).filter(
    (column) => column + 1 >= (first as number) && column + 1 <= (last ?? (first as number)),
  );
}

/** What is written under `carries`: one face or a list of them; a face that does not exist is told elsewhere. */
export function carriedOf({ build, path: bar, label }: Bar): readonly CarriedFace[] {
  const { reader } = build;
  const base = `${bar}.carries`;
  const written = reader.data(base);
  const paths = Array.isArray(written) ? written.map((_, index) => `${base}.${index + 1}`) : written ? [base] : [];
  return paths.flatMap((path) => {
    const face = build.faces.find((each) => each.name === reader.text(`${path}.face`));
    if (!face) return [];
    const from = reader.value(`${path}.from`, "length", "left edge of the face on the bar", label);
    return [{ path, face, from, columns: columnsOf(face, reader.text(`${path}.columns`)) }];
  });
}

/** Panels and extras of the columns carried; extras are taken as shared evenly over the columns. */
export function carriedMass({ face, columns }: CarriedFace): Value<"mass"> {
  if (columns.length === face.columns) return face.mass;
  const share = `${columns.length} ÷ ${face.columns}`;
  const extras = face.extras.map((each) => times(each, columns.length / face.columns, share));
  return sum([panelsMassOf(face, columns), ...extras], "mass", "m");
}

/** The place of the left edge of a carried column, metres. */
const leftEdge = ({ face, from, columns }: CarriedFace, column: number): number =>
  (from as Known).value + columns.indexOf(column) * (face.panelWidth as Known).value;

/** Neighbouring columns that weigh the same are one load: a large face is then as quickly solved as a small one. */
function joined(loads: readonly UniformLoad[]): readonly UniformLoad[] {
  const all: UniformLoad[] = [];
  for (const each of loads) {
    const last = all.at(-1);
    const same = last && Math.abs(last.to - each.from) < 1e-9 && Math.abs(last.perMetre - each.perMetre) < 1e-9;
    if (same) all[all.length - 1] = { ...last, to: each.to };
    else all.push(each);
  }
  return all;
}

/** What each column of a carried face weighs with its share of extras and the jumpers in it. */
function ofCarried(bar: Bar, carried: CarriedFace): readonly UniformLoad[] {
  const { face, columns } = carried;
  const width = (face.panelWidth as Known).value;
  const start = (carried.from as Known).value;
  const extras = (sum(face.extras, "mass") as Known).value / face.columns;
  const kinds = face.kinds.map((kind) => ({ kind, each: (kindMass(face, kind) as Known).value }));
  const jumpers = new Map<number, number>();
  for (const { spread } of bar.cables)
    for (const { carried: holder, column, load } of spread)
      if (holder === carried) jumpers.set(column, (jumpers.get(column) ?? 0) + load);
  const loads = columns.map((column, place) => {
    const panels = kinds.reduce((total, { kind, each }) => total + (kind.perColumn[column] ?? 0) * each, 0);
    const load = panels + extras + (jumpers.get(column) ?? 0);
    return { from: start + place * width, to: start + (place + 1) * width, perMetre: load / width };
  });
  return joined(loads);
}

/** The bar's own weight and everything that hangs spread out. Every value has to be known. */
export const uniformOn = (bar: Bar): readonly UniformLoad[] => [
  { from: 0, to: (bar.length as Known).value, perMetre: (bar.massPerLength as Known).value },
  ...bar.carries.flatMap((carried) => ofCarried(bar, carried)),
];

/** Feeds and returns at the middle of their column, those of one column together, and other mass in the middle of the bar. */
export function pointsOn(bar: Bar): readonly PointLoad[] {
  const at = new Map<number, number>();
  const put = (place: number, load: number): void => void at.set(place, (at.get(place) ?? 0) + load);
  for (const { points } of bar.cables)
    for (const { carried, column, load } of points)
      put(leftEdge(carried, column) + (carried.face.panelWidth as Known).value / 2, load);
  if (bar.otherLoad?.known) put((bar.length as Known).value / 2, bar.otherLoad.value);
  return [...at].map(([place, load]) => ({ at: place, load }));
}
