import type { Known } from "@plumbmark/calc";
import type { Data } from "./yaml.js";

// Of a file that is being written most groups are as they were: nothing in them is read again.

/** The part of the schema that a group was read by. */
type Form = object;
type Values = readonly (readonly [path: string, value: Known])[];

const known = new WeakMap<object, { readonly form: Form; readonly path: string; readonly values: Values }>();

/** `faces.banner`: groups below are many, and are read with the one they stand in. */
const KEPT = /^[^.]+(?:\.[^.]+)?$/u;

const isKept = (data: Data | undefined, path: string): data is Data & object =>
  typeof data === "object" && data !== null && KEPT.test(path);

/** What was read of a group, by the same form at the same path; undefined where that is not known. */
export function valuesRead(form: Form, data: Data | undefined, path: string): Values | undefined {
  const found = isKept(data, path) ? known.get(data) : undefined;
  return found?.form === form && found.path === path ? found.values : undefined;
}

/**
 * Keeps what was read of a group in which nothing is wrong, unsure or odd: that would have a place in the text, and
 * values have none.
 * @param values asked only where it is kept
 */
export function keepRead(form: Form, data: Data | undefined, path: string, values: () => Values): void {
  if (isKept(data, path)) known.set(data, { form, path, values: values() });
}
