import type { Brief } from "../brief.js";
import { driven } from "../decide/data.js";
import { type Decided, decided, type Scheme } from "../decide/decision.js";
import { hung } from "../decide/hangs.js";
import { ordered } from "../decide/order.js";
import { pictured } from "../decide/picture.js";
import { powered } from "../decide/power.js";
import { reached } from "../decide/reach.js";
import { begun, type Candidate } from "../decide/size.js";
import { stood } from "../decide/stand.js";
import { lettered, TextRoom } from "../decide/text.js";
import { seen } from "../decide/viewing.js";

/** How a scheme differs from the plainest one of its face. */
export interface Turn {
  /** Every other panel on another circuit. */
  readonly apart: boolean;
  /** Hangs more than the fewest that do. */
  readonly moreHangs: number;
}

export const PLAIN: Turn = { apart: false, moreHangs: 0 };

/** Puts one decision after another; the first that cannot be made ends it. */
function chained(scheme: Scheme, ...steps: readonly ((scheme: Scheme) => Decided)[]): Decided {
  let now: Decided = { ok: true, scheme };
  for (const step of steps) {
    if (!now.ok) return now;
    now = step(now.scheme);
  }
  return now;
}

/** A whole scheme of one face: every decision in turn, each on top of those before. */
export function planned(brief: Brief, candidate: Candidate, turn: Turn): Decided {
  const text = new TextRoom(brief);
  const begin = begun(brief, candidate);
  const start = text.lines === undefined ? seen(brief, begin) : lettered(brief, begin, text);
  const { order, decision } = ordered(brief, start);
  const support = brief.wish.support ?? "flown";
  const held = (scheme: Scheme): Decided =>
    support === "flown" ? hung(brief, scheme, { more: turn.moreHangs }) : stood(brief, scheme);
  const variant = [
    ...begin.variant,
    ...(turn.apart ? ["over two circuits, so that a trip leaves half lit"] : []),
    ...(turn.moreHangs > 0 ? [`on ${turn.moreHangs} hang${turn.moreHangs === 1 ? "" : "s"} more than need be`] : []),
  ];
  return chained(
    { ...decided(start, {}, decision), variant },
    (scheme) => pictured(brief, scheme),
    (scheme) => powered(brief, scheme, order.cells, { apart: turn.apart }),
    (scheme) => driven(brief, scheme, order.cells),
    held,
    (scheme) => {
      const { decided: long, changed } = reached(brief, scheme);
      // Longer cables weigh more: what hangs is laid out anew, and told once.
      return changed && long.ok ? held({ ...long.scheme, decisions: long.scheme.decisions.slice(0, -1) }) : long;
    },
  );
}
