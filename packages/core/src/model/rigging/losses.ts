import { type Known, lostHang, type Missing, suddenPeak, type Value } from "@plumbmark/calc";
import type { Bar } from "./bar.js";
import type { Hang } from "./hang.js";
import { reactionIn } from "./reaction.js";

/** What becomes of a bar that loses one hang. */
export interface Loss {
  /** The hang that is lost. */
  readonly lost: Hang;
  /** It tips, or is balanced on one hang. */
  readonly tips: boolean;
  /** What the others swing up to, of each that carries more than before; none where the bar tips. */
  readonly peaks: readonly { readonly hang: Hang; readonly peak: Value<"mass"> }[];
}

/** Each hang lost in turn, from the level bar to the level bar without it. */
export function lossesOf(bar: Bar): readonly Loss[] | Missing {
  const { hanging, hung } = bar;
  if (!hanging.known) return hanging;
  if (!hung.known) return hung;
  const { order, beam, inputs } = hanging;
  const names = order.map(({ name }) => name);
  return order.map((lost, index): Loss => {
    const found = lostHang(beam, index);
    if (found.tips) return { lost, tips: true, peaks: [] };
    const when = `with ${lost.name} lost: `;
    const peaks = order.flatMap((hang, other) => {
      if (other === index) return [];
      const before = hang.reaction;
      const after: Known<"mass"> = reactionIn(found.after, other, inputs, { names, when });
      const peak = suddenPeak.of({ R1: before, R2: after });
      return before.known && after.value > before.value ? [{ hang, peak }] : [];
    });
    return { lost, tips: false, peaks };
  });
}
