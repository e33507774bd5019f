import type { Mistake } from "../document/mistake.js";
import { START } from "../document/place.js";
import { shown } from "../document/shown.js";
import { type Data, join, type Placed } from "../document/yaml/yaml.js";

/** More than any system lets a path have would only keep whoever matches it busy. */
const LONGEST = 1000;

type Refused = readonly [is: (value: string) => boolean, says: string];

const has = (sign: RegExp) => (value: string) => sign.test(value);

/** What a path may not be, and how that is said of it; the first that is met is told. */
const ANY_WAY: readonly Refused[] = [
  [has(/^!?$/u), "is empty"],
  [has(/\p{Cc}|[\u200e\u200f\u202a-\u202e\u2066-\u2069]/u), "holds a character that cannot be seen"],
  [has(/\\/u), "has a backslash in it"],
  [has(/^!?(?:\/|[a-z][a-z0-9+.-]*:)/iu), "does not start from the folder of the house standard"],
  [(value) => value.length > LONGEST, `is longer than ${LONGEST} characters`],
];

/** An edition deeper in the tree may name one above it: that it stays inside is looked at when it is read. */
const DOWNWARDS: readonly Refused[] = [
  ...ANY_WAY,
  // Also where a pattern gives it for a choice: `{..,parts}`.
  [has(/(?:^|[!/{(,|])\.\.(?:[/}),|]|$)/u), "leads upwards"],
  [has(/\/(?:\/|$)/u), "has no name before or after a slash"],
];

/** Parts of a path that a sign can stand in. */
const steps = (pattern: string): readonly string[] => pattern.split("/");

const count = (text: string, sign: RegExp): number => text.match(sign)?.length ?? 0;

/**
 * What would be matched in a time that grows with a high power of the path's length, or faster: two `**` are tried at
 * each pair of slashes, three `*` at each three letters of a name. Brackets may hold whatever a regular expression may.
 */
const PATTERNS: readonly Refused[] = [
  ...DOWNWARDS,
  [has(/[()]/u), "has a round bracket in it; `{a,b}` is a choice"],
  [(value) => count(value, /\*\*+/gu) > 2, "has `**` more than twice"],
  [
    (value) => steps(value).some((step) => count(step, /\*+|\?/gu) > 3),
    "has more than three signs between two slashes",
  ],
  [(value) => count(value, /[{[]/gu) > 5, "has more than five choices"],
];

const KEYS = {
  documents: [PATTERNS, "`builds/**/*.md`"],
  parts: [PATTERNS, "`parts/*.yaml`"],
  papers: [PATTERNS, "`letters/**`"],
  surveys: [PATTERNS, "`venues/**/*.md`"],
  stock: [PATTERNS, "`stock.yaml`"],
  replaces: [ANY_WAY, "`editions/2026.yaml`"],
} as const;

function mistakeAt(placed: Placed, key: keyof typeof KEYS, path: string, value: string): readonly Mistake[] {
  const [refused, such] = KEYS[key];
  const says = refused.find(([is]) => is(value))?.[1];
  if (says === undefined) return [];
  return [
    {
      rule: "document.front-matter",
      path,
      place: placed.places.get(path) ?? START,
      says: `\`${key}\` names ${value === "" ? "nothing: it" : `${shown(value)}, which`} ${says}.`,
      mend: `Write a path from the folder of the house standard, with \`/\` between folders, such as ${such}.`,
    },
  ];
}

/** Paths of a house standard that cannot lead to a file below it, each with its place. The disk is not asked. */
export function pathMistakes(placed: Placed): readonly Mistake[] {
  const data = placed.data as Readonly<Record<string, Data>>;
  return (Object.keys(KEYS) as (keyof typeof KEYS)[]).flatMap((key) => {
    const value = data[key];
    if (Array.isArray(value))
      return value.flatMap((each, index) => mistakeAt(placed, key, join(key, index + 1), String(each)));
    return typeof value === "string" ? mistakeAt(placed, key, key, value) : [];
  });
}
