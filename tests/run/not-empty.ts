/**
 * What is looped over in a test, or tried case by case, when there is something in it: a loop over nothing asserts
 * nothing and passes.
 * @throws Error when there is nothing in it
 */
export function notEmpty<T>(found: Iterable<T>): readonly T[] {
  const all = [...found];
  if (all.length === 0) throw new Error("There is nothing here to test: what the loop goes over is empty.");
  return all;
}
