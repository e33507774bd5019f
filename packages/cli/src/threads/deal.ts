import { availableParallelism } from "node:os";

/** A thread takes as long to start as this many documents to inspect. */
const WORTH_A_THREAD = 20;
const MOST_THREADS = 8;
/** Documents in a share: few, so that at the end nobody waits long for another. */
const MOST_IN_A_SHARE = 8;

/** With one processor a thread is worth having for so many: it can be given room that the program itself cannot. */
const WORTH_THE_ROOM = 100;

/** How many threads are worth having besides this one, which then only deals out; 0 is none. */
export function threadsFor(documents: number, processors = availableParallelism()): number {
  const threads = Math.min(processors, MOST_THREADS, Math.floor(documents / WORTH_A_THREAD));
  return threads > 1 || documents >= WORTH_THE_ROOM ? threads : 0;
}

export function sharesOf<T>(documents: readonly T[], threads: number): readonly (readonly T[])[] {
  const size = Math.max(1, Math.min(MOST_IN_A_SHARE, Math.floor(documents.length / (4 * threads))));
  return Array.from({ length: Math.ceil(documents.length / size) }, (_, index) =>
    documents.slice(index * size, (index + 1) * size),
  );
}

/**
 * Deals shares out to whoever is free; gives the answers in the order of the shares. What threads that cannot be had, or
 * die, leave undone is done here.
 */
export async function deal<S, Answer>(
  shares: readonly S[],
  asks: readonly ((share: S) => Promise<Answer | undefined>)[],
  here: () => (share: S) => Answer,
  onAnswer: (answer: Answer) => void = () => undefined,
): Promise<readonly Answer[]> {
  const found = new Array<Answer>(shares.length);
  const left = [...shares.keys()];
  const there = async (ask: (share: S) => Promise<Answer | undefined>): Promise<void> => {
    for (let index = left.shift(); index !== undefined; index = left.shift()) {
      const answer = await ask(shares[index] as S);
      if (!answer) return void left.unshift(index);
      found[index] = answer;
      onAnswer(answer);
    }
  };
  // Each has a second share at hand, so that none is idle while its answer is on the way.
  await Promise.all(asks.flatMap((each) => [there(each), there(each)]));
  if (left.length > 0) {
    const one = here();
    for (const index of left) found[index] = one(shares[index] as S);
  }
  return found;
}
