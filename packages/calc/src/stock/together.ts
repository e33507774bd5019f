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

export interface Together {
  /** Builds the stock cannot make even one at a time. */
  readonly never: readonly { readonly build: string; readonly short: readonly Shortage[] }[];
  /** Two builds that cannot stand at the same time, and what is short. */
  readonly apart: readonly { readonly builds: readonly [string, string]; readonly short: readonly Shortage[] }[];
  /** Builds that stand with any others: no lot of theirs is asked for more than it has by all builds together. */
  readonly free: readonly string[];
  /** Of the rest every largest set that can stand at the same time; undefined when they are too many to go through. */
  readonly sets: readonly (readonly string[])[] | undefined;
}

/** 2 to this power of sets are gone through. */
const MOST = 14;

function shortages(
  builds: readonly string[],
  claims: readonly Claim[],
  stock: ReadonlyMap<string, number>,
): readonly Shortage[] {
  const asked = new Map<string, number>();
  for (const { build, lot, count } of claims) if (builds.includes(build)) asked.set(lot, (asked.get(lot) ?? 0) + count);
  return [...asked]
    .map(([lot, sum]) => ({ lot, asked: sum, count: stock.get(lot) ?? 0 }))
    .filter((each) => each.asked > each.count);
}

/** Every set that fits and to which nothing can be added. */
function largest(builds: readonly string[], fits: (set: readonly string[]) => boolean): readonly (readonly string[])[] {
  let sets: readonly (readonly string[])[] = [[]];
  for (const build of builds) sets = [...sets, ...sets.map((set) => [...set, build]).filter(fits)];
  return sets.filter((set) => builds.every((build) => set.includes(build) || !fits([...set, build])));
}

/** Which builds the stock can make at the same time, whatever their dates: panels and spares against the count of each lot. */
export function standTogether(claims: readonly Claim[], stock: ReadonlyMap<string, number>): Together {
  const builds = [...new Set(claims.map(({ build }) => build))];
  const short = (set: readonly string[]): readonly Shortage[] => shortages(set, claims, stock);
  const never = builds.map((build) => ({ build, short: short([build]) })).filter((each) => each.short.length > 0);
  const able = builds.filter((build) => !never.some((each) => each.build === build));
  const scarce = new Set(short(able).map(({ lot }) => lot));
  const rivals = able.filter((build) => claims.some((each) => each.build === build && scarce.has(each.lot)));
  const apart = rivals
    .flatMap((one, index) =>
      rivals.slice(index + 1).map((other) => ({ builds: [one, other] as const, short: short([one, other]) })),
    )
    .filter((each) => each.short.length > 0);
  const sets = rivals.length > MOST ? undefined : largest(rivals, (set) => short(set).length === 0);
  return { never, apart, free: able.filter((build) => !rivals.includes(build)), sets: rivals.length === 0 ? [] : sets };
}
