/**
 * A straight bar on level, unyielding supports. The functions of this folder do not care whether loads are
 * kilograms or newtons: reactions come out in the unit of the loads, moments in that unit × metre.
 * Loads act downwards when positive, reactions push up when positive, sagging moments are positive.
 */
export interface Beam {
  /** Whole length, overhangs included, metres. */
  readonly length: number;
  /** Places of the supports from the left end, metres, rising. */
  readonly supports: readonly number[];
  /** Uniform loads, each per metre between two places. */
  readonly uniform?: readonly UniformLoad[];
  readonly points?: readonly PointLoad[];
  readonly couples?: readonly Couple[];
}

export interface UniformLoad {
  readonly from: number;
  readonly to: number;
  readonly perMetre: number;
}

export interface PointLoad {
  readonly at: number;
  readonly load: number;
}

/** A moment put in at one place, clockwise positive. */
export interface Couple {
  readonly at: number;
  readonly moment: number;
}

/** Two places closer than this are one place: a hundredth of a millimetre. */
export const SAME_PLACE = 1e-5;

export const samePlace = (a: number, b: number): boolean => Math.abs(a - b) < SAME_PLACE;

/** Everything the beam carries, in the unit of the loads. */
export function totalLoad(beam: Beam): number {
  const spread = (beam.uniform ?? []).reduce((sum, each) => sum + each.perMetre * (each.to - each.from), 0);
  return (beam.points ?? []).reduce((sum, each) => sum + each.load, spread);
}

/** Moment of all loads about a place, clockwise positive (a load to the right of it counts positive). */
export function loadMomentAbout(beam: Beam, place: number): number {
  const spread = (beam.uniform ?? []).reduce(
    (sum, { from, to, perMetre }) => sum + perMetre * (to - from) * ((from + to) / 2 - place),
    0,
  );
  const points = (beam.points ?? []).reduce((sum, each) => sum + each.load * (each.at - place), spread);
  return (beam.couples ?? []).reduce((sum, each) => sum + each.moment, points);
}

/** @throws RangeError when a place is off the beam, a load is not a number, or the supports do not rise. */
export function requireSoundBeam(beam: Beam): void {
  const onBeam = (place: number): boolean => place >= -SAME_PLACE && place <= beam.length + SAME_PLACE;
  const places = [
    ...beam.supports,
    ...(beam.uniform ?? []).flatMap((each) => [each.from, each.to]),
    ...(beam.points ?? []).map((each) => each.at),
    ...(beam.couples ?? []).map((each) => each.at),
  ];
  if (!(beam.length > 0) || !Number.isFinite(beam.length))
    throw new RangeError("a beam has to have a length above zero");
  for (const place of places) if (!onBeam(place)) throw new RangeError(`a place at ${place} m is off the beam`);
  const loads = [
    ...(beam.uniform ?? []).map((each) => each.perMetre),
    ...(beam.points ?? []).map((each) => each.load),
    ...(beam.couples ?? []).map((each) => each.moment),
  ];
  if (!loads.every(Number.isFinite)) throw new RangeError("a load on the beam is not a finite number");
  if ((beam.uniform ?? []).some((each) => each.to < each.from)) throw new RangeError("a load ends before it begins");
  for (const [index, place] of beam.supports.entries())
    if (index > 0 && place - beam.supports[index - 1]! < SAME_PLACE)
      throw new RangeError("two supports are at one place, or not in their order");
}
