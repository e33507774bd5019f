import { type HungBeam, type Missing, slackEnvelope, type Value } from "@plumbmark/calc";
import type { Bar } from "./bar.js";
import type { Hang } from "./hang.js";
import { reactionIn } from "./reaction.js";

/** Which hangs carry nothing in a case. */
export interface SlackCase {
  /** The hang that is taken as slack; none in the level bar. */
  readonly slackened: Hang | undefined;
  /** The case in words, ` with H1 slack, and H3 then slack, too`; empty where all are taut. */
  readonly when: string;
}

export interface WorstCase extends SlackCase {
  readonly hang: Hang;
  readonly reaction: Value<"mass">;
}

type Standing = HungBeam & { readonly stable: true };

/** Which hangs carry nothing, in words: one that is taken as slack may leave another with nothing to carry. */
export function whenSlack(hung: Standing, names: readonly string[], slackened?: number): string {
  const also = hung.slack.filter((each) => each !== slackened).map((each) => names[each]);
  const more = also.join(" and ");
  if (slackened === undefined) return also.length > 0 ? ` with ${more} slack though the bar is level` : "";
  const then = also.length > 0 ? `, and ${more} then slack, too` : "";
  return ` with ${names[slackened]} slack${then}${hung.neutral ? ", balanced on one hang" : ""}`;
}

/** What the hangs of a bar carry with each of them slack in turn. */
export type SlackCases =
  | {
      readonly known: true;
      readonly worst: readonly WorstCase[];
      /** Every case in which the bar still hangs, solved. */
      readonly standing: readonly (SlackCase & { readonly slackened: Hang; readonly hung: Standing })[];
      /** Hangs without which it tips, or is balanced on one hang alone and may. */
      readonly unstable: readonly Hang[];
    }
  | Missing;

/** Each hang of a bar slack in turn. Undefined with fewer than three hangs: their shares do not depend on level. */
export function slackCases(bar: Bar): SlackCases | undefined {
  if (bar.hangs.length < 3) return undefined;
  const { hanging, hung } = bar;
  if (!hanging.known) return hanging;
  if (!hung.known) return hung;
  const envelope = slackEnvelope(hanging.beam);
  if (!envelope) return undefined;
  const { order, inputs } = hanging;
  const names = order.map(({ name }) => name);
  const hangAt = (index: number): Hang => order[index] as Hang;
  const worst = order.map((hang, index): WorstCase => {
    const slackened = envelope.worst[index]?.slackened;
    const found = envelope.cases.find((each) => each.slackened === slackened)?.hung;
    const inCase = found?.stable ? found : hung;
    const when = whenSlack(inCase, names, slackened);
    return {
      hang,
      reaction: reactionIn(inCase, index, inputs, { names, when: when && `${when.trim()}: ` }),
      slackened: slackened === undefined ? undefined : hangAt(slackened),
      when,
    };
  });
  const standing = envelope.cases.flatMap(({ slackened, hung: solved }) =>
    solved.stable ? [{ slackened: hangAt(slackened), when: whenSlack(solved, names, slackened), hung: solved }] : [],
  );
  return { known: true, worst, standing, unstable: envelope.unstable.map(hangAt) };
}
