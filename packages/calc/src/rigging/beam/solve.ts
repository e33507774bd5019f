import { type Beam, requireSoundBeam, samePlace } from "./beam.js";
import { displacements, loadBetween, nodesOf } from "./stiffness.js";

/** A stretch of the beam under one uniform load; shear, moment and deflection are polynomials on it. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly perMetre: number;
  /** At its left end, just right of what acts there. */
  readonly shear: number;
  readonly moment: number;
  /** EI × slope and EI × deflection at its left end, up positive. */
  readonly turn: number;
  readonly lift: number;
}

export interface Extreme {
  readonly at: number;
  readonly value: number;
}

export interface SolvedBeam {
  readonly beam: Beam;
  readonly reactions: readonly number[];
  /** Moment over every support; hogging is negative. */
  readonly supportMoments: readonly number[];
  readonly stretches: readonly Stretch[];
  readonly greatestMoment: Extreme;
  readonly leastMoment: Extreme;
}

export const shearAt = (stretch: Stretch, x: number): number => stretch.shear - stretch.perMetre * (x - stretch.from);

export function momentAt(stretch: Stretch, x: number): number {
  const s = x - stretch.from;
  return stretch.moment + stretch.shear * s - (stretch.perMetre * s * s) / 2;
}

/** EI × slope. */
export function turnAt(stretch: Stretch, x: number): number {
  const s = x - stretch.from;
  return stretch.turn + stretch.moment * s + (stretch.shear * s ** 2) / 2 - (stretch.perMetre * s ** 3) / 6;
}

/** EI × deflection, up positive. */
export function liftAt(stretch: Stretch, x: number): number {
  const s = x - stretch.from;
  const bent = (stretch.moment * s ** 2) / 2 + (stretch.shear * s ** 3) / 6 - (stretch.perMetre * s ** 4) / 24;
  return stretch.lift + stretch.turn * s + bent;
}

export const stretchAt = (solved: SolvedBeam, x: number): Stretch =>
  solved.stretches.find((each) => x <= each.to) ?? solved.stretches.at(-1)!;

/** The walk began level at height zero; turned and lifted so that the first support has its slope and does not move. */
function settle(walked: readonly Stretch[], support: number, firstTurn: number): Stretch[] {
  const there = walked.find((each) => support <= each.to) ?? walked.at(-1)!;
  const extra = firstTurn - turnAt(there, support);
  const rise = -liftAt(there, support) - extra * support;
  return walked.map((each) => ({ ...each, turn: each.turn + extra, lift: each.lift + rise + extra * each.from }));
}

/**
 * The stretches of a beam under its loads and given reactions, from the left, and the moment over every support. Slope
 * and deflection begin as nothing at the left end.
 */
export function stretchesUnder(
  beam: Beam,
  reactions: readonly number[],
): { readonly stretches: readonly Stretch[]; readonly over: readonly number[] } {
  const nodes = nodesOf(beam);
  const stretches: Stretch[] = [];
  const over: number[] = [];
  let [shear, moment, turn, lift] = [0, 0, 0, 0];
  for (const [index, from] of nodes.entries()) {
    beam.supports.forEach((place, support) => {
      if (!samePlace(place, from)) return;
      over.push(moment);
      shear += reactions[support]!;
    });
    for (const { at, load } of beam.points ?? []) if (samePlace(at, from)) shear -= load;
    for (const couple of beam.couples ?? []) if (samePlace(couple.at, from)) moment += couple.moment;
    const to = nodes[index + 1];
    if (to === undefined) break;
    const perMetre = loadBetween(beam, from, to);
    const stretch = { from, to, perMetre, shear, moment, turn, lift };
    stretches.push(stretch);
    moment = momentAt(stretch, to);
    shear = shearAt(stretch, to);
    turn = turnAt(stretch, to);
    lift = liftAt(stretch, to);
  }
  return { stretches, over };
}

/** Ends of the stretch, and the place inside it where the shear is zero. */
function turningPlaces({ from, to, shear, perMetre }: Stretch): readonly number[] {
  const inside = perMetre === 0 ? Number.NaN : from + shear / perMetre;
  return inside > from && inside < to ? [from, inside, to] : [from, to];
}

const pick = (all: readonly Extreme[], better: (a: number, b: number) => boolean): Extreme =>
  all.reduce((best, each) => (better(each.value, best.value) ? each : best));

/** The most sagging and the most hogging moment of some stretches. */
export function momentExtremes(stretches: readonly Stretch[]): Pick<SolvedBeam, "greatestMoment" | "leastMoment"> {
  const moments = stretches.flatMap((each) => turningPlaces(each).map((at) => ({ at, value: momentAt(each, at) })));
  return {
    greatestMoment: pick(moments, (a, b) => a > b),
    leastMoment: pick(moments, (a, b) => a < b),
  };
}

/**
 * Reactions and moments of a continuous beam of constant EI on two or more level supports.
 * @throws RangeError when there are fewer than two supports or a place is off the beam.
 */
export function solveBeam(beam: Beam): SolvedBeam {
  requireSoundBeam(beam);
  if (beam.supports.length < 2) throw new RangeError("a beam needs two supports to stand");
  const { reactions, firstTurn } = displacements(beam);
  const { stretches, over } = stretchesUnder(beam, reactions);
  return {
    beam,
    reactions,
    supportMoments: over,
    stretches: settle(stretches, beam.supports[0]!, firstTurn),
    ...momentExtremes(stretches),
  };
}
