import fc from "fast-check";
import { inject, test } from "vitest";

const { deep: LONG, seed } = inject("effort");

/** How many cases all properties share; `npm run fuzz -- 200000` asks for more than a deep run does. */
const TOTAL = Number(process.env.PLUMBMARK_FUZZ ?? (LONG ? 40_000 : 100));
/** Another start in every run; a failure prints it. Well below the largest seed, so that every piece has one. */
const SEED = seed % 1_000_000_000;

/** However few cases there are, each property gets so many runs. */
const LEAST = 2;

/** Runs between two looks at what failed: a long run goes on after a failure, with other cases. */
const CHUNK = 40;

export interface Share<T> {
  /** Part of all cases, of 1000. */
  readonly share: number;
  /** Cases that are tried in one run, because what surrounds them takes longer than they do. */
  readonly together?: number;
  readonly of: fc.Arbitrary<T>;
  readonly holds: (given: T) => void | Promise<void>;
}

async function failure<T>(
  { of, holds, together }: Share<T>,
  seed: number,
  numRuns: number,
): Promise<string | undefined> {
  const property = fc.asyncProperty(of, async (given) => {
    const before = prototypes();
    await holds(given);
    if (prototypes() !== before) throw new Error("a prototype was changed");
  });
  try {
    // Making a batch smaller would take longer than looking for the one that fails, see `one`.
    await fc.assert(property, { seed, numRuns, endOnFailure: together !== undefined });
    return undefined;
  } catch (error) {
    const { message, cause } = error as Error;
    // A whole document as counterexample hides what is wrong; the cause tells the text it was found in.
    const how = message.replace(/^Counterexample: .*$/mu, (all) => all.slice(0, together === undefined ? 2500 : 300));
    return `seed ${seed}: ${how}\n${cause instanceof Error ? (cause.stack ?? "") : String(cause ?? "")}`;
  }
}

/** What every object inherits: no key of a file may add to it. */
const prototypes = (): string =>
  [Object.prototype, Array.prototype, Function.prototype, String.prototype, Map.prototype]
    .map((each) => Reflect.ownKeys(each).map(String).join())
    .join(";");

/** A property over generated cases, as a test. */
export function fuzz<T>(name: string, share: Share<T>): void {
  const runs = Math.max(LEAST, Math.ceil((TOTAL * share.share) / 1000 / (share.together ?? 1)));
  test(
    name,
    async () => {
      const failures: string[] = [];
      const start = performance.now();
      for (let done = 0; done < runs; done += CHUNK) {
        const failed = await failure(share, SEED + done, Math.min(CHUNK, runs - done));
        if (failed !== undefined) failures.push(failed);
        if (failed !== undefined && LONG) process.stdout.write(`${failed.slice(0, 3000)}\n`);
        if (failed !== undefined && !LONG) break;
      }
      const seconds = (performance.now() - start) / 1000;
      if (LONG)
        process.stdout.write(
          `${name}: ${runs * (share.together ?? 1)} cases from seed ${SEED} in ${seconds.toFixed(0)} s, ${failures.length} failures\n`,
        );
      if (failures.length > 0) throw new Error(failures.join("\n\n"));
    },
    LONG ? 2 ** 31 - 1 : 120_000,
  );
}

/** Holds a batch to a property; when it fails, the first text that fails by itself is told with it. */
export function one(texts: readonly string[], holds: (texts: readonly string[]) => void): void {
  try {
    holds(texts);
  } catch (all) {
    for (const text of texts) {
      try {
        holds([text]);
      } catch (error) {
        throw new Error(`${(error as Error).message} in ${JSON.stringify(text)}`, { cause: error });
      }
    }
    throw all;
  }
}
