import { isDay, isToCome } from "../../document/days.js";
import type { DesignSource } from "./design-source.js";

/** What is written as stated, signed or confirmed on a day that is still to come. */
export interface Ahead {
  readonly path: string;
  readonly on: string;
}

/** Every statement of a document whose day is after the one it is inspected on. */
export function statedAhead({ reader, context }: DesignSource): readonly Ahead[] {
  const under = (path: string, key = ""): readonly string[] => reader.keys(path).map((name) => `${path}.${name}${key}`);
  const statements = [
    "rigging.letter",
    "cautions-confirmed",
    ...under("rigging.bars", ".letter"),
    ...under("exposure-stated"),
    ...under("faces", ".fixings"),
    ...under("power.circuits", ".stays-on"),
    ...under("power.supplies", ".generator.earthing"),
  ];
  return statements.flatMap((path) => {
    const on = reader.text(`${path}.on`);
    return on !== undefined && isDay(on) && isToCome(on, context.today) ? [{ path, on }] : [];
  });
}
