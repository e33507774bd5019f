import { type Beam, loadMomentAbout, totalLoad } from "./beam.js";
import { deflectionAt } from "./deflection.js";
import { type SolvedBeam, solveBeam } from "./solve.js";

/** A bar that hangs: ropes pull up only, so a hang that would have to push is slack and carries nothing. */
export type HungBeam =
  | {
      readonly stable: true;
      readonly solved: SolvedBeam;
      /** Reaction of every hang in the order given; a slack one carries 0. */
      readonly reactions: readonly number[];
      /** Numbers of the hangs found slack. */
      readonly slack: readonly number[];
      /** The middle of the load is right under one outermost taut hang: the others carry nothing, and it may tip. */
      readonly neutral: boolean;
    }
  | { readonly stable: false; readonly because: string; readonly slack: readonly number[] };

const without = (count: number, slack: ReadonlySet<number>): readonly number[] =>
  Array.from({ length: count }, (_, index) => index).filter((index) => !slack.has(index));

/** The resultant of the loads has to fall between the outermost hangs that are taut; right under one it is neutral. */
function balance(beam: Beam, places: readonly number[]): "still" | "neutral" | "tips" {
  const slip = 1e-9 * Math.max(1, Math.abs(totalLoad(beam)) * beam.length);
  const [first, last] = [loadMomentAbout(beam, places[0]!), -loadMomentAbout(beam, places.at(-1)!)];
  if (first < -slip || last < -slip) return "tips";
  return first <= slip || last <= slip ? "neutral" : "still";
}

function solveWith(beam: Beam, taut: readonly number[]): SolvedBeam {
  return solveBeam({ ...beam, supports: taut.map((index) => beam.supports[index]!) });
}

/**
 * Solves a hanging bar; a hang found pushing is taken out and the bar solved again, one found stretched is put back.
 * `slackened` are hangs taken as slack from the start (they stay so).
 */
export function hangBeam(beam: Beam, slackened: readonly number[] = []): HungBeam {
  const slack = new Set(slackened);
  const near = 1e-9 * Math.max(1, Math.abs(totalLoad(beam)));
  for (let round = 0; round < 4 * beam.supports.length + 4; round += 1) {
    const taut = without(beam.supports.length, slack);
    const list = [...slack].sort((a, b) => a - b);
    if (taut.length < 2) return { stable: false, because: "fewer than two hangs are left", slack: list };
    const places = taut.map((index) => beam.supports[index]!);
    const state = balance(beam, places);
    if (state === "tips")
      return { stable: false, because: "the load is not between the hangs that are left", slack: list };
    const solved = solveWith(beam, taut);
    const worst = solved.reactions.reduce((best, each, index) => (each < solved.reactions[best]! ? index : best), 0);
    if (solved.reactions[worst]! < -near) {
      slack.add(taut[worst]!);
      continue;
    }
    const scale = near * beam.length ** 3;
    const stretched = list.find((i) => !slackened.includes(i) && deflectionAt(solved, beam.supports[i]!) < -scale);
    if (stretched !== undefined) {
      slack.delete(stretched);
      continue;
    }
    const carried = (index: number): number => {
      const reaction = slack.has(index) ? 0 : solved.reactions[taut.indexOf(index)]!;
      return Math.abs(reaction) <= near ? 0 : reaction;
    };
    const reactions = beam.supports.map((_, index) => carried(index));
    return { stable: true, solved, reactions, slack: list, neutral: state === "neutral" };
  }
  return { stable: false, because: "no set of taut hangs was found that balances the load", slack: [...slack] };
}
