import type { Mistake } from "../document/mistake.js";
import { type Place, START } from "../document/place.js";
import type { Data, Placed } from "../document/yaml/yaml.js";

/** Keys of a house standard that have another name now, read for one version more. */
export const OLD_KEYS = { rules: "requirements", plugins: "rules-from" } as const;

type Old = keyof typeof OLD_KEYS;

const OLD = Object.keys(OLD_KEYS) as readonly Old[];

type Mapping = Readonly<Record<string, Data>>;

/** The same with every old key under its new name; the new one counts where both stand, which is refused elsewhere. */
export function renewed(data: Mapping): Mapping {
  const entries = Object.entries(data).filter(([key]) => !Object.hasOwn(OLD_KEYS, key));
  const moved = OLD.flatMap((key) => (Object.hasOwn(data, key) ? [[OLD_KEYS[key], data[key]] as const] : []));
  return Object.fromEntries([...moved, ...entries]) as Mapping;
}

/** The key under which a file writes what is called `key` now. */
export function writtenKey({ keys }: Placed, key: (typeof OLD_KEYS)[Old]): string {
  const old = OLD.find((each) => OLD_KEYS[each] === key) as Old;
  return !keys.has(key) && keys.has(old) ? old : key;
}

const placeOf = ({ keys }: Placed, key: string): Place => keys.get(key) ?? START;

/** Old and new name of one key in one file: which of them would count nobody can tell. */
export const twiceNamed = (placed: Placed): readonly Mistake[] =>
  OLD.filter((key) => placed.keys.has(key) && placed.keys.has(OLD_KEYS[key])).map((key) => ({
    rule: "document.front-matter",
    path: key,
    place: placeOf(placed, key),
    says: `Both \`${key}\` and \`${OLD_KEYS[key]}\` are written; the first is the name the second had before.`,
    mend: `Put all of it under \`${OLD_KEYS[key]}\`, and take \`${key}\` out.`,
  }));

/** Old keys of one file, each with its place and its new name. */
export const oldKeys = (
  placed: Placed,
): readonly { readonly place: Place; readonly says: string; readonly mend: string }[] =>
  OLD.filter((key) => placed.keys.has(key)).map((key) => ({
    place: placeOf(placed, key),
    says: `\`${key}\` is now called \`${OLD_KEYS[key]}\`.`,
    mend: `Write \`${OLD_KEYS[key]}\`: the old name is read in this version, and no longer in the next.`,
  }));
