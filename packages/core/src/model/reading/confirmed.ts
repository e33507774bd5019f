import { isDay } from "../../document/days.js";
import { written } from "../../document/nothing-written.js";
import { type Person, person } from "../../document/person.js";
import type { Reader } from "./reader.js";

/** Who has confirmed something, and on which day; undefined for what is not written, or names nobody or no day. */
export interface Confirmation {
  readonly by: Person | undefined;
  /** `2027-01-31`. */
  readonly on: string | undefined;
}

const dayAt = (reader: Reader, path: string): string | undefined => {
  const text = written(reader.data(path));
  return text !== undefined && isDay(text) ? text : undefined;
};

/** `{by, on}` at a path. */
export const confirmationAt = (reader: Reader, path: string): Confirmation => ({
  by: person(reader.text(`${path}.by`)),
  on: dayAt(reader, `${path}.on`),
});

/** Keys of `{by, on}` or `{by, licence, on, file}` that say nothing, as paths. */
export const silentAt = (path: string, said: object): readonly string[] =>
  Object.entries(said).flatMap(([key, value]) => (value === undefined ? [`${path}.${key}`] : []));
