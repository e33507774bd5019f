import { type Missing, slackEnvelope, type Value } from "@plumbmark/calc";
import { type Bar, type Hang, reactionIn } from "./rigging.js";

export interface WorstCase {
  readonly hang: Hang;
  readonly reaction: Value<"mass">;
  /** The hang that is slack in the worst case; none when the level bar is the worst. */
  readonly slackened: Hang | undefined;
}

export type SlackCases =
  | { readonly known: true; readonly worst: readonly WorstCase[]; readonly unstable: readonly Hang[] }
  | Missing;

/** Each hang of a bar slack in turn. Undefined with fewer than three hangs: their shares do not depend on level. */
export function slackCases(bar: Bar): SlackCases | undefined {
  if (bar.hangs.length < 3) return undefined;
  const { hanging, hung } = bar;
  if (!hanging.known) return hanging;
  if (!hung.known) return hung;
  const envelope = slackEnvelope(hanging.beam);
  if (!envelope) return undefined;
  const worst = hanging.order.map((hang, index): WorstCase => {
    const slackened = envelope.worst[index]?.slackened;
    const inCase = envelope.cases.find((each) => each.slackened === slackened)?.hung;
    return {
      hang,
      reaction: reactionIn(inCase?.stable ? inCase : hung, index, hanging.inputs),
      slackened: slackened === undefined ? undefined : hanging.order[slackened],
    };
  });
  return { known: true, worst, unstable: envelope.unstable.map((index) => hanging.order[index] as Hang) };
}
