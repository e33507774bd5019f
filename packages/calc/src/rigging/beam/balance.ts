import { formula } from "../../formula/formula.js";
import { type Beam, loadMomentAbout, requireSoundBeam, SAME_PLACE, totalLoad } from "./beam.js";
import { type Bent, bentUnder } from "./bent.js";

/** One way a bar can hang: what each hang carries, and how the bar is bent by it. */
export interface BarCase {
  /** Reaction of every hang, in the order of the supports. */
  readonly reactions: readonly number[];
  /** Numbers of the hangs that carry something. */
  readonly taut: readonly number[];
  /** The bar on those hangs alone. */
  readonly bent: Bent;
  /** How far each rope's end is off level, metres, up positive; only where lengths were varied. */
  readonly errors?: readonly number[];
}

/** All ways a bar can hang, as far as its worst can lie there, or why it cannot hang still. */
export type Balances =
  | { readonly still: true; readonly cases: readonly BarCase[] }
  | { readonly still: false; readonly because: string };

/** The place where all that hangs would balance, from the left end. */
export const loadMiddle = (beam: Beam): number => loadMomentAbout(beam, 0) / totalLoad(beam);

/** The bar on some of its hangs, with what each of them carries. */
export function caseOn(beam: Beam, reactions: readonly number[], taut: readonly number[]): BarCase {
  const on = { ...beam, supports: taut.map((index) => beam.supports[index]!) };
  return {
    reactions,
    taut,
    bent: bentUnder(
      on,
      taut.map((index) => reactions[index]!),
    ),
  };
}

/**
 * Every reaction a bar's hangs can have is R ≥ 0 with ΣR = W and ΣR × x = W × x̄, whatever the stiffness of the bar and
 * however unlevel the ropes. With two equations a corner of that set has at most two reactions that are not nothing:
 * each pair of hangs with x̄ between them, or the one hang right at x̄. Reactions and moments are linear in R, so the
 * worst of both lies at a corner. A lost hang is the face R = 0 of the same set and adds nothing static.
 * Source: statics; checked against linear programs.
 */
export function anyBalance(beam: Beam): Balances {
  requireSoundBeam(beam);
  const total = totalLoad(beam);
  if (!(total > 0)) return { still: false, because: "nothing hangs on it" };
  if (beam.supports.length < 2) return { still: false, because: "it has fewer than two hangs, and turns" };
  const middle = loadMiddle(beam);
  const [first, last] = [beam.supports[0]!, beam.supports.at(-1)!];
  if (middle < first - SAME_PLACE || middle > last + SAME_PLACE)
    return { still: false, because: "the middle of the load is not between its outer hangs" };
  if (middle < first + SAME_PLACE || middle > last - SAME_PLACE)
    return {
      still: false,
      because: "the middle of the load is right under an outer hang, and it is balanced on that one",
    };
  const cases: BarCase[] = [];
  const none = beam.supports.map(() => 0);
  for (const [k, place] of beam.supports.entries())
    if (Math.abs(place - middle) <= SAME_PLACE) cases.push(caseOn(beam, none.with(k, total), [k]));
  for (const [i, left] of beam.supports.entries())
    for (const [j, right] of beam.supports.entries()) {
      if (!(left < middle - SAME_PLACE && right > middle + SAME_PLACE)) continue;
      const onLeft = (total * (right - middle)) / (right - left);
      cases.push(caseOn(beam, none.with(i, onLeft).with(j, total - onLeft), [i, j]));
    }
  return { still: true, cases };
}

/** The case in which a hang carries most; of equal ones the first. */
export const heaviestCase = (cases: readonly BarCase[], hang: number): BarCase =>
  cases.reduce((worst, each) => (each.reactions[hang]! > worst.reactions[hang]! * (1 + 1e-9) ? each : worst));

/** The greatest bending moment either way of a case. */
const bending = ({ bent }: BarCase): number => Math.max(bent.greatestMoment.value, -bent.leastMoment.value);

/** The case in which the bar is bent most, either way; of equal ones the first. */
export const mostBentCase = (cases: readonly BarCase[]): BarCase =>
  cases.reduce((worst, each) => (bending(each) > bending(worst) * (1 + 1e-9) ? each : worst));

export const balanceReaction = formula({
  id: "rigging.balance-reaction",
  title: "What a hang carries when only it and one other are taut",
  symbol: "R",
  kind: "mass",
  inputs: {
    W: { kind: "mass", is: "all that hangs on the bar", least: 0 },
    xm: { kind: "length", is: "place of the middle of the load", least: 0 },
    xk: { kind: "length", is: "place of the hang", least: 0 },
    xo: { kind: "length", is: "place of the other hang", least: 0 },
  },
  expression: "W × (xo − xm) ÷ (xo − xk)",
  source: "statics",
  validity: "the middle of the load between the two hangs; any stiffness, any level",
  example: {
    given: { W: 260, xm: 84 / 13, xk: 1, xo: 15 },
    gives: 1110 / 7,
    within: 1e-9,
    from: "hangs at 1 and 15 ft, 10 lb/ft over 16 ft and 100 lb at 4 ft: 158.571 lb (moments about the other hang)",
  },
  compute: ({ W, xm, xk, xo }) => (W * (xo - xm)) / (xo - xk),
});
