import { type Hand, hand } from "./hand.js";

/** Threads with nothing to do just now. The program does not wait for them. */
const idle: Hand[] = [];

/**
 * So many threads: those that are idle, and new ones. To start a thread and have it load its script takes as long as to
 * inspect a few documents, so what reads the outlines of a docs repository leaves its threads to what comes after.
 * @param documents how many there are for all of them
 */
export function hire(threads: number, documents: number): readonly Hand[] {
  const crew = Array.from({ length: threads }, () => idle.pop() ?? hand(documents));
  for (const each of crew) each.hold(true);
  return crew;
}

/** Leaves threads that have answered everything to whoever hires next. */
export function leave(crew: readonly Hand[]): void {
  const there = crew.filter(({ isThere }) => isThere());
  for (const each of there) each.hold(false);
  idle.push(...there);
}

/** Waits until threads do nothing more: one that still writes would write into what is being taken away. */
export const dismiss = async (crew: readonly Hand[]): Promise<void> => {
  await Promise.all(crew.map(({ end }) => end()));
};
