/** A need that no length on the shelf is left for. */
export interface ShortLength {
  readonly need: number;
  /** Index of the need as it was given. */
  readonly index: number;
}

export interface LengthsTaken {
  /** For each need, as given: the length that is taken, or undefined where none is left that reaches. */
  readonly taken: readonly (number | undefined)[];
  readonly short: readonly ShortLength[];
}

/**
 * Gives each need the shortest length on the shelf that reaches, the longest need first. Whatever reaches a long need
 * reaches every shorter one, so no other choice serves more needs or takes less length, and what is short is the
 * shortest there is to buy.
 * @param needs in metres
 * @param owned how many there are of each length, in metres
 */
export function takeLengths(needs: readonly number[], owned: ReadonlyMap<number, number>): LengthsTaken {
  const left = new Map([...owned].sort(([a], [b]) => a - b));
  const taken: (number | undefined)[] = needs.map(() => undefined);
  const short: ShortLength[] = [];
  const order = needs.map((need, index) => ({ need, index })).sort((a, b) => b.need - a.need);
  for (const { need, index } of order) {
    const found = [...left].find(([length, count]) => count > 0 && length >= need - REACHES);
    if (!found) {
      short.push({ need, index });
      continue;
    }
    taken[index] = found[0];
    left.set(found[0], found[1] - 1);
  }
  return { taken, short };
}

/** A length written in feet and kept in metres may differ in its last figures from the same written otherwise. */
const REACHES = 1e-9;
