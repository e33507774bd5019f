/** Cuts a line of items into the fewest pieces of at most `most`, as even as can be, longer ones first. */
export function divide<T>(items: readonly T[], most: number): readonly (readonly T[])[] {
  if (!(most >= 1)) throw new RangeError("a piece has to take at least one item");
  if (items.length === 0) return [];
  const pieces = Math.ceil(items.length / Math.floor(most));
  const sizes = Array.from({ length: pieces }, (_, index) =>
    Math.floor(items.length / pieces + (index < items.length % pieces ? 1 : 0)),
  );
  let at = 0;
  return sizes.map((size) => {
    const piece = items.slice(at, at + size);
    at += size;
    return piece;
  });
}
