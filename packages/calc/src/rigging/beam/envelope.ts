import type { Beam } from "./beam.js";
import { type HungBeam, hangBeam } from "./slack.js";

export interface Envelope {
  /** One case for every hang taken as slack. */
  readonly cases: readonly { readonly slackened: number; readonly hung: HungBeam }[];
  /** Worst reaction of every hang over the level bar and all stable cases, and the hang slack in that case. */
  readonly worst: readonly { readonly reaction: number; readonly slackened?: number }[];
  /** Hangs without which the bar tips or may tip; while there is one, the worst reactions do not clear the bar. */
  readonly unstable: readonly number[];
}

/**
 * Each hang slack in turn: with three or more hangs the shares depend on how level they are.
 * Undefined with fewer than three hangs, or when the bar does not stand at all: there is nothing to bound.
 */
export function slackEnvelope(beam: Beam): Envelope | undefined {
  if (beam.supports.length < 3) return undefined;
  const level = hangBeam(beam);
  if (!level.stable) return undefined;
  const cases = beam.supports.map((_, slackened) => ({ slackened, hung: hangBeam(beam, [slackened]) }));
  const worst = level.reactions.map((reaction, index) => {
    let best: { reaction: number; slackened?: number } = { reaction };
    for (const { slackened, hung } of cases)
      if (hung.stable && hung.reactions[index]! > best.reaction) best = { reaction: hung.reactions[index]!, slackened };
    return best;
  });
  return {
    cases,
    worst,
    unstable: cases.filter(({ hung }) => !hung.stable || hung.neutral).map((each) => each.slackened),
  };
}
