import {
  type Beam,
  type Known,
  loadMomentAbout,
  type PointLoad,
  sum,
  times,
  type UniformLoad,
  type Value,
} from "@plumbmark/calc";
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

/** Other mass on a bar: with its place, or without one. */
export interface OtherLoad {
  readonly path: string;
  readonly label: string;
  readonly mass: Value<"mass">;
  /** Its distance from the left end of the bar; undefined where none is written, so that the worst place counts. */
  readonly at: Value<"length"> | undefined;
}

/** Everything else that hangs on a bar: `other-loads` by name, and the one `other-load` without a place. */
export function otherLoadsOf({ build: { reader }, path, label }: Bar): readonly OtherLoad[] {
  const single = reader.optional(`${path}.other-load`, "mass", "other load", label);
  const named = reader.keys(`${path}.other-loads`).map((name): OtherLoad => {
    const here = `${path}.other-loads.${name}`;
    const own = `The other load ${name} of bar ${path.split(".").at(-1)}`;
    return {
      path: here,
      label: own,
      mass: reader.value(`${here}.mass`, "mass", "mass", own),
      at: reader.optional(`${here}.at`, "length", "place on the bar", own),
    };
  });
  return [
    ...(single
      ? [{ path: `${path}.other-load`, label: `The other load of ${label}`, mass: single, at: undefined }]
      : []),
    ...named,
  ];
}

/** Places tried for what has none: the ends, every hang, and so many steps between. */
const STEPS = 24;

/**
 * The bar with what has no place of its own at each place that can be the worst: at the ends, at every hang, where the
 * middle of all that hangs then lies right at a hang, and in steps between. Reactions are linear in the place between
 * these, so theirs is exact; of the moment no step is farther than a forty-eighth of the bar from the worst.
 */
export function beamsOf(bar: Bar, beam: Beam): readonly Beam[] {
  const load = bar.unplaced.reduce((total, { mass }) => total + (mass.known ? mass.value : 0), 0);
  if (load === 0) return [beam];
  const middle = beam.length / 2;
  const fixed = { ...beam, points: [...(beam.points ?? []), { at: middle, load: -load }] };
  // The place at which the moments of all loads about a hang cancel.
  const balanced = beam.supports.map((place) => place - loadMomentAbout(fixed, place) / load);
  const steps = Array.from({ length: STEPS + 1 }, (_, step) => (beam.length * step) / STEPS);
  const places = [...new Set([middle, ...steps, ...beam.supports, ...balanced])];
  const others = pointsOn(bar, []);
  return places
    .filter((at) => at >= 0 && at <= beam.length)
    .map((at) => ({ ...beam, points: [...others, { at, load }] }));
}

/** Feeds and returns at the middle of their column, those of one column together, and other loads at their place. */
export function pointsOn(bar: Bar, unplaced: readonly OtherLoad[] = bar.unplaced): readonly PointLoad[] {
  const at = new Map<number, number>();
  const put = (place: number, load: number): void => void at.set(place, (at.get(place) ?? 0) + load);
  for (const { points } of bar.cables)
    for (const { carried, column, load } of points)
      put(leftEdge(carried, column) + (carried.face.panelWidth as Known).value / 2, load);
  for (const { mass, at: place } of bar.otherLoads) if (mass.known && place?.known) put(place.value, mass.value);
  // Level, what has no place is taken as in the middle; at worst it is where it is worst.
  for (const { mass } of unplaced) if (mass.known) put((bar.length as Known).value / 2, mass.value);
  return [...at].map(([place, load]) => ({ at: place, load }));
}
