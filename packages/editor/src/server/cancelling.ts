import { type CancellationToken, LSPErrorCodes, ResponseError } from "vscode-languageserver/node.js";
import type { InSteps } from "../answers/index.js";
import type { Session } from "./session.js";

/** Lets what arrived meanwhile be looked at first: another change, or that an answer is not wanted any more. */
export const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

const cancelled = (): ResponseError<void> =>
  new ResponseError(LSPErrorCodes.RequestCancelled, "The answer is not wanted any more.");

const changed = (): ResponseError<void> =>
  new ResponseError(LSPErrorCodes.ContentModified, "Files were changed while the answer was worked out.");

/** What is waited for; where the answer is not wanted any more, nobody waits for it. */
export async function untilCancelled<T>(waited: Promise<T>, token: CancellationToken): Promise<T> {
  if (token.isCancellationRequested) throw cancelled();
  const stop = new Promise<never>((_, reject) => {
    const listening = token.onCancellationRequested(() => reject(cancelled()));
    const ends = (): void => listening.dispose();
    waited.then(ends, ends);
  });
  return Promise.race([waited, stop]);
}

/** A person does not notice that an answer pauses, nor that the server hears of something else so much later. */
const SLICE_MS = 10;

/** Works an answer out that is about the whole repository, so that it can be cancelled and other answers come between. */
export const inSteps =
  (session: Session, token: CancellationToken) =>
  async <T>(steps: InSteps<T>): Promise<T> => {
    const { files } = session.repository;
    for (let until = performance.now() + SLICE_MS; ; ) {
      const step = steps.next();
      if (step.done) return step.value;
      if (performance.now() < until) continue;
      await turn();
      if (token.isCancellationRequested) throw cancelled();
      // Places of two states of the repository would be mixed.
      if (session.repository.files !== files) throw changed();
      until = performance.now() + SLICE_MS;
    }
  };
