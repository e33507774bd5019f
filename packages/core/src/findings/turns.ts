/** The one figure that would turn a check, as its rule names it. */
export interface Turns {
  /** Its place in the document. */
  readonly path: string;
  /** Which way it has to go for the check to hold. */
  readonly sense: "at most" | "at least";
  /** Who states it, where that is a licensed person: it is asked for and never proposed as an edit. */
  readonly asks?: "engineer" | "electrician";
}

/** A symbol, so that it goes with an entry wherever that is copied, and never into a record. */
export const TURNS = Symbol("turns");

/** What a trial of the figure came to: how far the check is over its limit, in any unit; negative where it holds. */
export interface Attempted {
  readonly holds: boolean;
  readonly over?: number;
}

interface Search {
  readonly sense: Turns["sense"];
  /** Where the check does not hold, as far as is known; where it does, if anywhere. */
  readonly from: number;
  readonly to: number;
  /** From the figure as it is written, where it is. */
  readonly first?: Attempted;
  readonly whole: boolean;
  /** The unit it is written in: what is claimed is a round figure in it. */
  readonly step: (value: number) => number;
  readonly attempt: (value: number) => Attempted | undefined;
}

/** Trials of one figure: more would keep the author waiting. */
export const MOST_TRIALS = 12;
/** Two are for the ends, and two for the figure that is claimed and the one beside it. */
const SEARCHING = MOST_TRIALS - 4;

/** A trial that came out with a margin. */
type Point = readonly [value: number, over: number];

/** Where the line through two trials meets the limit, in the figure itself or in one over it. */
function meets([one, over]: Point, [other, otherOver]: Point, inverse: boolean): number {
  const share = over / (over - otherOver);
  return inverse ? 1 / (1 / one + (1 / other - 1 / one) * share) : one + (other - one) * share;
}

/**
 * Where to look next. Most formulas are straight in a figure or in one over it: then the line between the ends meets the
 * limit in one step. Where something else governs on the side that holds, the margin is the same along a whole stretch of
 * it: then the line through the last two trials that do not hold does. Every third step halves what is left, whatever the
 * formula.
 */
function between(bads: readonly Point[], goods: readonly Point[], bad: number, good: number, trial: number): number {
  const half = bad > 0 && good > 0 && Math.max(bad / good, good / bad) > 8 ? Math.sqrt(bad * good) : (bad + good) / 2;
  const [nearBad, nextBad] = [bads.at(-1), bads.at(-2)];
  const [nearGood, nextGood] = [goods.at(-1), goods.at(-2)];
  if (!nearBad || !nearGood || trial % 3 === 2) return half;
  const isFlat = nextGood === undefined ? nearGood[1] === 0 : nextGood[1] === nearGood[1];
  const other = isFlat ? nextBad : nearGood;
  if (!other || other[1] === nearBad[1]) return half;
  const found = meets(nearBad, other, trial % 3 === 1 && bad > 0 && good > 0);
  const isInside = found > Math.min(bad, good) && found < Math.max(bad, good);
  return isInside ? found : half;
}

/**
 * The figure at which a check turns, round and on the side where it holds; undefined where it turns nowhere between, or
 * where so many trials do not find it.
 */
export function turningValue(search: Search): number | undefined {
  const { sense, whole, step, attempt } = search;
  let [bad, good] = [search.from, search.to];
  const far = attempt(good);
  if (!far?.holds) return undefined;
  const near = search.first ?? attempt(bad);
  if (!near || near.holds) return undefined;
  const scale = Math.max(Math.abs(near.over ?? 0), Number.MIN_VALUE);
  const [bads, goods]: [Point[], Point[]] = [[], []];
  const keep = (value: number, { over, holds }: Attempted): void => {
    if (over !== undefined) (holds ? goods : bads).push([value, over]);
  };
  keep(good, far);
  keep(bad, near);
  for (let trial = 0; trial < SEARCHING && Math.abs(bad - good) > (whole ? 1 : step(good || bad)); trial += 1) {
    let middle = between(bads, goods, bad, good, trial);
    if (whole) middle = sense === "at most" ? Math.floor(middle) : Math.ceil(middle);
    if (middle === bad || middle === good) middle = whole ? Math.round((bad + good) / 2) : (bad + good) / 2;
    const found = attempt(middle);
    if (!found) return undefined;
    keep(middle, found);
    if (found.holds) good = middle;
    else bad = middle;
    if (whole || !found.holds || found.over === undefined || Math.abs(found.over) >= scale * 1e-9) continue;
    // Right at the limit, or on a stretch along which it stays there: the figure beside it tells.
    if (trial + 1 >= SEARCHING) break;
    trial += 1;
    const next = good + ((sense === "at most" ? 1 : -1) * step(good)) / 2;
    const beside = attempt(next);
    if (!beside) return undefined;
    keep(next, beside);
    if (beside.holds) good = next;
    else bad = next;
  }
  const size = whole ? 1 : step(good);
  // The round figure next to where it turns: the one before it, if that holds, and else the one behind.
  const [round, on] = sense === "at most" ? [Math.ceil, size] : [Math.floor, -size];
  const before = round(good / size - (sense === "at most" ? 1e-6 : -1e-6)) * size;
  const holds = attempt(before)?.holds;
  if (holds === undefined) return undefined;
  if (holds) return attempt(before + on)?.holds === false ? before : undefined;
  return attempt(before - on)?.holds ? before - on : undefined;
}
