import { deflectionValue, gapsOf, type Known, missing, samePlace, tabled, type Value } from "@plumbmark/calc";
import type { Bar } from "./bar.js";
import type { Hang } from "./hang.js";

export interface Span {
  readonly label: string;
  /** Its own length; of an overhang twice that, since it has one support only (common practice). */
  readonly length: Known;
  readonly sag: Value;
}

const span = (metres: number): Known => tabled(metres, "length", "geometry", "span");

/** Parts of a bar between its taut hangs, and the ends beyond them, with how far each sinks. */
export function spansOf(bar: Bar): readonly Span[] {
  const { hanging, hung } = bar;
  if (!hanging.known || !hung.known) return [];
  const { length, supports } = hung.solved.beam;
  const name = (place: number): string =>
    (hanging.order.find((hang: Hang) => samePlace((hang.at as Known).value, place)) as Hang).name;
  const { elasticity: E, secondMoment: I } = bar.section;
  const gaps = gapsOf([E, I]);
  const sag = (from: number, to: number): Value =>
    gaps.length > 0
      ? missing("length", ...gaps)
      : deflectionValue(hung.solved, [from, to], E as Known, I as Known, hanging.inputs);
  const [first, last] = [supports[0] as number, supports.at(-1) as number];
  const between = supports.slice(1).map((to, index) => ({
    label: `between ${name(supports[index] as number)} and ${name(to)}`,
    length: span(to - (supports[index] as number)),
    sag: sag(supports[index] as number, to),
  }));
  const ends = [
    { label: `left of ${name(first)}`, from: 0, to: first },
    { label: `right of ${name(last)}`, from: last, to: length },
  ].filter(({ from, to }) => !samePlace(from, to));
  return [
    ...between,
    ...ends.map(({ label, from, to }) => ({ label, length: span(2 * (to - from)), sag: sag(from, to) })),
  ];
}
