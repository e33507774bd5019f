import type { Data } from "@plumbmark/core";

export type Mapping = Readonly<Record<string, Data>>;

/** A group of keys; an empty one for anything else. */
export const mappingOf = (data: Data | undefined): Mapping =>
  data !== null && typeof data === "object" && !Array.isArray(data) ? (data as Mapping) : {};

/** Value of a key of a group. */
export const keyOf = (data: Data | undefined, key: string): Data | undefined =>
  Object.hasOwn(mappingOf(data), key) ? mappingOf(data)[key] : undefined;

/** Text of a key; undefined where there is none. */
export function textOf(data: Data | undefined, key: string): string | undefined {
  const value = keyOf(data, key);
  return typeof value === "string" && value.trim() !== "" ? value.trim() : undefined;
}

/** Texts of a list, or the one text that stands in its place. */
export function textsOf(data: Data | undefined, key: string): readonly string[] {
  const value = keyOf(data, key);
  if (typeof value === "string") return [value];
  return Array.isArray(value) ? value.filter((each): each is string => typeof each === "string") : [];
}

/** Whole number of a key; undefined where there is none. */
export function wholeAt(data: Data | undefined, key: string): number | undefined {
  const value = keyOf(data, key);
  return typeof value === "number" && Number.isInteger(value) ? value : undefined;
}

/** A group without the keys whose value is undefined, in the order they are given. */
export const grouped = (entries: Readonly<Record<string, Data | undefined>>): Mapping =>
  Object.fromEntries(Object.entries(entries).filter(([, value]) => value !== undefined)) as Mapping;
