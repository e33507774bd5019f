import { beginToWitness } from "../files/seen.js";
import type { Surroundings } from "../surroundings.js";
import { keepAnswer, LARGEST, placeOf } from "./answers.js";

export interface Recording {
  /** The surroundings, where what is printed is taken down. */
  readonly around: Surroundings;
  /** Keeps what was printed, with everything that was seen since it began. */
  readonly keep: (status: number) => void;
}

/** Takes down what a command prints and sees; undefined where nothing is to be kept. */
export function recording(around: Surroundings): Recording | undefined {
  const place = around.words && placeOf(around.words, around);
  if (place === undefined) return undefined;
  const witness = beginToWitness();
  const [printed, warned]: [Buffer[], string[]] = [[], []];
  let size = 0;
  return {
    around: {
      ...around,
      print: (text) => {
        const bytes = Buffer.from(text);
        size += bytes.length;
        // What is too much to be kept need not be held either.
        if (size > LARGEST) printed.length = 0;
        else printed.push(bytes);
        around.print(text);
      },
      warn: (text) => {
        warned.push(text);
        around.warn(text);
      },
    },
    keep: (status) => {
      if (witness.settled && size <= LARGEST)
        keepAnswer(place, { status, warned, printed: Buffer.concat(printed) }, witness.facts);
    },
  };
}
