/** The greatest number up to `most` for which something holds, by halving: what holds of a number holds of every smaller one. */
export function greatest(most: number, holds: (number: number) => boolean): number {
  let [low, high] = [0, most];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (holds(middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}
