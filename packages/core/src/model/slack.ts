import { type HungBeam, type Missing, slackEnvelope, type Value } from "@plumbmark/calc";
import { type Bar, type Hang, reactionIn } from "./rigging.js";

export interface WorstCase {
  readonly hang: Hang;
  readonly reaction: Value<"mass">;
  /** The hang that is slack in the worst case; none when the level bar is the worst. */
  readonly slackened: Hang | undefined;
}

/** What the hangs of a bar carry with each of them slack in turn. */
export type SlackCases =
  | {
      readonly known: true;
      readonly worst: readonly WorstCase[];
      /** Every case in which the bar still hangs, solved. */
      readonly standing: readonly { readonly slackened: Hang; readonly hung: HungBeam & { readonly stable: true } }[];
      /** Hangs without which it tips. */
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
    const inCase = envelope.cases.find((each) => each.slackened === slackened)?.hung;
    const when = slackened === undefined ? "" : `with ${names[slackened]} slack: `;
    return {
      hang,
      reaction: reactionIn(inCase?.stable ? inCase : hung, index, inputs, { names, when }),
      slackened: slackened === undefined ? undefined : hangAt(slackened),
    };
  });
  const standing = envelope.cases.flatMap(({ slackened, hung: solved }) =>
    solved.stable ? [{ slackened: hangAt(slackened), hung: solved }] : [],
  );
  return { known: true, worst, standing, unstable: envelope.unstable.map(hangAt) };
}
