import { beginToWitness } from "../files/seen.js";
import type { Surroundings } from "../surroundings.js";
import { keepAnswer, placeOf } from "./answers.js";

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
  const [printed, warned]: [string[], string[]] = [[], []];
  return {
    around: {
      ...around,
      print: (text) => {
        printed.push(text);
        around.print(text);
      },
      warn: (text) => {
        warned.push(text);
        around.warn(text);
      },
    },
    keep: (status) => {
      if (witness.settled) keepAnswer(place, { status, warned, printed: Buffer.from(printed.join("")) }, witness.facts);
    },
  };
}
