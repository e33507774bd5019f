/** What one option of a wish takes: how many of each item, by the item's key. */
export type Needs = ReadonlyMap<string, number>;

/** The days something stands, both counted, as days since any fixed day; `to` may be infinite for what stays. */
export interface Days {
  readonly from: number;
  readonly to: number;
}

export interface WishOptions {
  readonly name: string;
  readonly days: Days;
  /** At least one. */
  readonly options: readonly Needs[];
}

/** An item is bought in whole packs: the maker's least order and the case. */
export interface Pack {
  readonly least: number;
  readonly step: number;
}

export interface Purchase {
  /** For each wish the option that is taken, by its place in the wish's list. */
  readonly chosen: ReadonlyMap<string, number>;
  /** What has to be there on the fullest day of each item. */
  readonly peak: Needs;
  /** What is bought: the peak less what is owned, in whole packs. */
  readonly buy: Needs;
}

/** Smallest number at or over `count` that the maker sells; 0 when nothing is needed. */
export function packed(count: number, { least, step }: Pack): number {
  if (count <= 0) return 0;
  const atLeast = Math.max(count, least);
  return Math.ceil(atLeast / step) * step;
}

/**
 * What has to be there of each item: summed over what stands at the same time, the greatest over what does not.
 * Whatever the days, a fullest one is the first day of something, so only those are looked at.
 */
export function peakOf(standing: readonly { readonly days: Days; readonly needs: Needs }[]): Needs {
  const peak = new Map<string, number>();
  for (const { days } of standing) {
    const day = new Map<string, number>();
    for (const { days: other, needs } of standing)
      if (other.from <= days.from && days.from <= other.to)
        for (const [item, count] of needs) day.set(item, (day.get(item) ?? 0) + count);
    for (const [item, count] of day) peak.set(item, Math.max(peak.get(item) ?? 0, count));
  }
  return peak;
}

const buyFor = (peak: Needs, owned: Needs, packOf: (item: string) => Pack): Needs =>
  new Map(
    [...peak]
      .map(([item, count]) => [item, packed(count - (owned.get(item) ?? 0), packOf(item))] as const)
      .filter(([, count]) => count > 0),
  );

/** Every way to take one of each list. */
function* productOf(sizes: readonly number[], at = 0): Generator<readonly number[]> {
  if (at === sizes.length) {
    yield [];
    return;
  }
  for (let index = 0; index < (sizes[at] as number); index += 1)
    for (const rest of productOf(sizes, at + 1)) yield [index, ...rest];
}

export interface PurchaseSearch {
  readonly best: Purchase;
  /** Combinations that were looked at, and all there are. */
  readonly looked: number;
  readonly all: number;
}

/** Combinations looked at before the search stops and says so. */
export const MOST_COMBINATIONS = 100_000;

/**
 * The purchase that serves several wishes: one option of each, so that the cost is least.
 * @param cost what a purchase costs, as a list that is compared figure by figure: panels before cables before the rest
 */
export function buyTogether(
  wishes: readonly WishOptions[],
  owned: Needs,
  packOf: (item: string) => Pack,
  cost: (buy: Needs) => readonly number[],
): PurchaseSearch | undefined {
  if (wishes.length === 0 || wishes.some(({ options }) => options.length === 0)) return undefined;
  const all = wishes.reduce((product, { options }) => product * options.length, 1);
  let best: Purchase | undefined;
  let least: readonly number[] = [];
  let looked = 0;
  for (const chosen of productOf(wishes.map(({ options }) => options.length))) {
    if (looked >= MOST_COMBINATIONS) break;
    looked += 1;
    const standing = wishes.map(({ days, options }, index) => ({
      days,
      needs: options[chosen[index] as number] as Needs,
    }));
    const peak = peakOf(standing);
    const buy = buyFor(peak, owned, packOf);
    const costs = cost(buy);
    if (best && !isLess(costs, least)) continue;
    best = { chosen: new Map(wishes.map(({ name }, index) => [name, chosen[index] as number])), peak, buy };
    least = costs;
  }
  return best && { best, looked, all };
}

function isLess(a: readonly number[], b: readonly number[]): boolean {
  for (const [index, figure] of a.entries()) if (figure !== (b[index] ?? 0)) return figure < (b[index] ?? 0);
  return false;
}
