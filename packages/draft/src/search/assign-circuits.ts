/** A circuit panels can be put on. */
export interface CircuitRoom {
  readonly name: string;
  /** What may be carried for hours less what is carried already, in any unit of load. */
  readonly rating: number;
  /** What is on it already that day, in the same unit. */
  readonly carried: number;
  /** What one panel adds to it, in the same unit. */
  readonly perPanel: number;
  /** Runs that can be plugged in. */
  readonly outlets: number;
  /** Most panels in one run from it: the least rating on the way, the drop. */
  readonly mostInRun: number;
  /** Leg or pair of legs, of a supply with several, so that they can be balanced. */
  readonly leg?: string;
}

/** How many panels each circuit takes; those that take none are left out. */
export interface CircuitShare {
  readonly name: string;
  readonly panels: number;
  /** Load over rating when they are on. */
  readonly share: number;
}

export interface CircuitAssignment {
  readonly circuits: readonly CircuitShare[];
  /** The fullest circuit's load over its rating. */
  readonly fullest: number;
}

/** More circuits than this are not searched exactly: subsets double with each. */
export const MOST_CIRCUITS_EXACT = 12;

const ROUNDING = 1e-9;

const shareWith = ({ carried, perPanel, rating }: CircuitRoom, panels: number): number =>
  (carried + panels * perPanel) / rating;

/** Most panels a circuit takes while its share stays at or under `most`. */
export function roomFor(circuit: CircuitRoom, most = 1): number {
  const { carried, perPanel, rating, outlets, mostInRun } = circuit;
  if (!(rating > 0) || !(perPanel > 0)) return 0;
  const byLoad = Math.floor((rating * most - carried) / perPanel + ROUNDING);
  return Math.max(0, Math.min(byLoad, outlets * mostInRun));
}

/** The same panels spread over given circuits so that the fullest is as empty as can be; undefined when they do not fit. */
function spread(circuits: readonly CircuitRoom[], panels: number, isIdle: boolean): CircuitAssignment | undefined {
  if (circuits.reduce((sum, each) => sum + roomFor(each), 0) < panels) return undefined;
  const taken = circuits.map(() => 0);
  // One panel after another onto the circuit that is emptiest with it: for loads that only grow this is the best there is.
  for (let left = panels; left > 0; left -= 1) {
    let best = -1;
    for (const [index, circuit] of circuits.entries()) {
      const next = (taken[index] as number) + 1;
      if (next > roomFor(circuit)) continue;
      if (best < 0 || shareWith(circuit, next) < shareWith(circuits[best] as CircuitRoom, (taken[best] as number) + 1))
        best = index;
    }
    taken[best] = (taken[best] as number) + 1;
  }
  const fullest = Math.max(...circuits.map((circuit, index) => shareWith(circuit, taken[index] as number)));
  const even = evenLegs(circuits, panels, fullest, isIdle) ?? taken;
  const shares = circuits.map((circuit, index) => ({
    name: circuit.name,
    panels: even[index] as number,
    share: shareWith(circuit, even[index] as number),
  }));
  return { circuits: shares, fullest };
}

/** Circuits of one leg, or those without one, and the panels they take together at the least and at the most. */
interface LegRoom {
  readonly leg: string | undefined;
  readonly own: readonly number[];
  readonly least: number;
  readonly most: number;
}

/**
 * The same panels over the same circuits, none fuller than the fullest has to be, so that the legs carry alike; undefined
 * where there are no two legs. `isIdle`: another leg of the supply carries nothing. One panel after another goes onto the leg that carries least: what is lowest is then as high
 * as can be and what is highest as low. What has no leg takes up as many as evens the others out.
 */
function evenLegs(
  circuits: readonly CircuitRoom[],
  panels: number,
  fullest: number,
  isIdle: boolean,
): readonly number[] | undefined {
  const most = circuits.map((circuit) => roomFor(circuit, fullest));
  const legs = [...new Set(circuits.map(({ leg }) => leg))].map((leg): LegRoom => {
    const own = circuits.flatMap((circuit, index) => (circuit.leg === leg ? [index] : []));
    const room = own.reduce((sum, index) => sum + (most[index] as number), 0);
    return { leg, own, least: Math.min(own.length, room), most: room };
  });
  const named = legs.filter(({ leg }) => leg !== undefined);
  if (named.length === 0 || (named.length === 1 && !isIdle)) return undefined;
  const free = legs.find(({ leg }) => leg === undefined);
  let best: { readonly totals: ReadonlyMap<LegRoom, number>; readonly off: number } | undefined;
  for (let beside = free?.least ?? 0; beside <= (free?.most ?? 0); beside += 1) {
    const totals = filled(named, panels - beside);
    if (!totals) continue;
    const off = Math.max(...totals.values()) - (isIdle ? 0 : Math.min(...totals.values()));
    if (!best || off < best.off) best = { totals: free ? new Map([...totals, [free, beside]]) : totals, off };
  }
  if (!best) return undefined;
  const taken = circuits.map(() => 0);
  for (const [{ own }, total] of best.totals)
    for (let left = total; left > 0; left -= 1) {
      const able = own.filter((index) => (taken[index] as number) < (most[index] as number));
      const after = (index: number): number =>
        // Each takes one before any takes two: a circuit without panels is none that is used.
        taken[index] === 0 ? -1 : shareWith(circuits[index] as CircuitRoom, (taken[index] as number) + 1);
      const next = able.reduce((a, b) => (after(b) < after(a) ? b : a));
      taken[next] = (taken[next] as number) + 1;
    }
  return taken;
}

/** Panels of each leg, as even as their room lets; undefined where they do not take so many or so few. */
function filled(legs: readonly LegRoom[], panels: number): ReadonlyMap<LegRoom, number> | undefined {
  const totals = new Map(legs.map((leg) => [leg, leg.least]));
  let left = panels - legs.reduce((sum, { least }) => sum + least, 0);
  if (left < 0) return undefined;
  for (; left > 0; left -= 1) {
    const able = legs.filter((leg) => (totals.get(leg) as number) < leg.most);
    const [first, ...others] = able;
    if (!first) return undefined;
    const lowest = others.reduce((a, b) => ((totals.get(b) as number) < (totals.get(a) as number) ? b : a), first);
    totals.set(lowest, (totals.get(lowest) as number) + 1);
  }
  return totals;
}

/** How far the legs are from carrying the same: the fullest less the emptiest, by panels. */
function imbalance(circuits: readonly CircuitRoom[], { circuits: shares }: CircuitAssignment): number {
  const legs = new Map<string, number>();
  for (const { leg } of circuits) if (leg !== undefined) legs.set(leg, 0);
  for (const { name, panels } of shares) {
    const leg = circuits.find((each) => each.name === name)?.leg;
    if (leg !== undefined) legs.set(leg, (legs.get(leg) ?? 0) + panels);
  }
  return legs.size < 2 ? 0 : Math.max(...legs.values()) - Math.min(...legs.values());
}

/** Every choice of `size` of the circuits. */
function* choicesOf<T>(all: readonly T[], size: number, from = 0): Generator<readonly T[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let index = from; index <= all.length - size; index += 1)
    for (const rest of choicesOf(all, size - 1, index + 1)) yield [all[index] as T, ...rest];
}

export interface CircuitSearch {
  readonly assignment: CircuitAssignment | undefined;
  /** Whether every choice was looked at. */
  readonly exact: boolean;
  /** Most panels that all circuits take together. */
  readonly room: number;
}

/**
 * Puts panels that are alike on as few circuits as can be, then so that the fullest is as empty as can be, then so that
 * the legs of a supply carry alike. Exact for up to twelve circuits; of more, the twelve with the most room are looked at.
 * @param atLeast circuits to use at the least: 2 for runs that lie between one another, so that a trip leaves half lit
 */
export function assignCircuits(circuits: readonly CircuitRoom[], panels: number, atLeast = 1): CircuitSearch {
  const room = circuits.reduce((sum, each) => sum + roomFor(each), 0);
  const able = circuits.filter((each) => roomFor(each) > 0).sort((a, b) => roomFor(b) - roomFor(a));
  const looked = able.slice(0, MOST_CIRCUITS_EXACT);
  const exact = looked.length === able.length;
  for (let size = Math.max(1, atLeast); size <= looked.length; size += 1) {
    let best: CircuitAssignment | undefined;
    for (const chosen of choicesOf(looked, size)) {
      const isIdle = circuits.some(({ leg }) => leg !== undefined && !chosen.some((each) => each.leg === leg));
      const found = spread(chosen, panels, isIdle);
      if (!found || found.circuits.some((each) => each.panels === 0)) continue;
      if (!best || isBetter(circuits, found, best)) best = found;
    }
    if (best) return { assignment: best, exact, room };
  }
  return { assignment: undefined, exact, room };
}

function isBetter(circuits: readonly CircuitRoom[], found: CircuitAssignment, best: CircuitAssignment): boolean {
  if (Math.abs(found.fullest - best.fullest) > ROUNDING) return found.fullest < best.fullest;
  return imbalance(circuits, found) < imbalance(circuits, best);
}
