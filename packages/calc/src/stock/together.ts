/** Panels and spares a build takes out of a lot. */
export interface Claim {
  readonly build: string;
  readonly lot: string;
  readonly count: number;
}

/** A lot that has fewer panels than some builds ask of it together. */
export interface Shortage {
  readonly lot: string;
  readonly asked: number;
  readonly count: number;
}

interface Pair {
  readonly builds: readonly [string, string];
  readonly short: readonly Shortage[];
}

export interface Together {
  /** Builds the stock cannot make even one at a time. */
  readonly never: readonly { readonly build: string; readonly short: readonly Shortage[] }[];
  /** Two builds that cannot stand at the same time, and what is short; of many such pairs the first. */
  readonly apart: readonly Pair[];
  /** Whether there are more such pairs. */
  readonly more: boolean;
  /** Builds that stand with any others: no lot of theirs is asked for more than it has by all builds together. */
  readonly free: readonly string[];
  /** Of the rest every largest set that can stand at the same time; undefined when they are too many to go through. */
  readonly sets: readonly (readonly string[])[] | undefined;
}

/** 2 to this power of sets are gone through. */
const MOST = 14;

/** Panels asked of each lot. */
type Asked = ReadonlyMap<string, number>;

/** What each build asks of each lot, in the order of the claims. */
function askedBy(claims: readonly Claim[]): ReadonlyMap<string, Asked> {
  const builds = new Map<string, Map<string, number>>();
  for (const { build, lot, count } of claims) {
    const own = builds.get(build) ?? new Map<string, number>();
    builds.set(build, own.set(lot, (own.get(lot) ?? 0) + count));
  }
  return builds;
}

/** Lots that have fewer panels than is asked of them in all. */
function shortages(all: readonly Asked[], stock: ReadonlyMap<string, number>): readonly Shortage[] {
  const sums = new Map<string, number>();
  for (const asked of all) for (const [lot, count] of asked) sums.set(lot, (sums.get(lot) ?? 0) + count);
  return [...sums]
    .map(([lot, asked]) => ({ lot, asked, count: stock.get(lot) ?? 0 }))
    .filter(({ asked, count }) => asked > count);
}

/**
 * Pairs that ask some lot for more than it has, in the order of the builds. Each build alone is content, so only two that
 * ask the same scarce lot can be such a pair: a repository has thousands of builds, and most lots a handful of them.
 */
function* pairsApart(
  rivals: ReadonlyMap<string, Asked>,
  scarce: ReadonlySet<string>,
  stock: ReadonlyMap<string, number>,
): Generator<Pair> {
  const order = new Map([...rivals.keys()].map((build, index) => [build, index]));
  const place = (build: string): number => order.get(build) as number;
  const askers = new Map([...scarce].map((lot): [string, [string, number][]] => [lot, []]));
  for (const [build, asked] of rivals) for (const [lot, count] of asked) askers.get(lot)?.push([build, count]);
  // Those who ask most first: of a large lot that many share a little each, nobody is looked at.
  for (const each of askers.values()) each.sort(([, one], [, other]) => other - one);
  for (const [one, asked] of rivals) {
    const others = new Set<string>();
    for (const [lot, own] of asked)
      for (const [other, count] of askers.get(lot) ?? []) {
        if (own + count <= (stock.get(lot) ?? 0)) break;
        if (place(other) > place(one)) others.add(other);
      }
    for (const other of [...others].sort((a, b) => place(a) - place(b))) {
      const short = shortages([asked, rivals.get(other) as Asked], stock);
      if (short.length > 0) yield { builds: [one, other], short };
    }
  }
}

/** The first of some things, and whether there are more. */
function firstOf<T>(things: Iterable<T>, most: number): { readonly first: readonly T[]; readonly more: boolean } {
  const first: T[] = [];
  for (const each of things) {
    if (first.length === most) return { first, more: true };
    first.push(each);
  }
  return { first, more: false };
}

/** Every set that fits and to which nothing can be added. */
function largest(builds: readonly string[], fits: (set: readonly string[]) => boolean): readonly (readonly string[])[] {
  let sets: readonly (readonly string[])[] = [[]];
  for (const build of builds) sets = [...sets, ...sets.map((set) => [...set, build]).filter(fits)];
  return sets.filter((set) => builds.every((build) => set.includes(build) || !fits([...set, build])));
}

/**
 * Which builds the stock can make at the same time, whatever their dates: panels and spares against the count of each lot.
 * @param most how many pairs are told: a lot that a thousand builds share has half a million of them
 */
export function standTogether(
  claims: readonly Claim[],
  stock: ReadonlyMap<string, number>,
  most = Number.POSITIVE_INFINITY,
): Together {
  const builds = askedBy(claims);
  const never = [...builds]
    .map(([build, asked]) => ({ build, short: shortages([asked], stock) }))
    .filter(({ short }) => short.length > 0);
  const out = new Set(never.map(({ build }) => build));
  const able = new Map([...builds].filter(([build]) => !out.has(build)));
  const scarce = new Set(shortages([...able.values()], stock).map(({ lot }) => lot));
  const rivals = new Map([...able].filter(([, asked]) => [...asked.keys()].some((lot) => scarce.has(lot))));
  const fits = (set: readonly string[]): boolean =>
    shortages(
      set.map((build) => rivals.get(build) as Asked),
      stock,
    ).length === 0;
  const sets = rivals.size > MOST ? undefined : largest([...rivals.keys()], fits);
  const { first: apart, more } = firstOf(pairsApart(rivals, scarce, stock), most);
  return {
    never,
    apart,
    more,
    free: [...able.keys()].filter((build) => !rivals.has(build)),
    sets: rivals.size === 0 ? [] : sets,
  };
}
