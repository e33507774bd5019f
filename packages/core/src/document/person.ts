import { asRead, isPlaceholder } from "./nothing-written.js";

/** Nobody in particular, in small letters; besides the placeholders of any text. */
const NOBODY: ReadonlySet<string> = new Set(
  (
    "none|nobody|no one|noone|me|myself|i|us|we|you|him|her|them|self|same|same as above|ditto|as above|see above|" +
    "the engineer|engineer|an engineer|the electrician|electrician|the rigger|rigger|the architect|the owner|owner|the venue|" +
    "venue|the house|the office|office|the client|client|the team|team|the crew|crew|staff|user|admin|author|preparer|" +
    "approver|signature|signed|initials|person|approved|ok|okay|yes|no|true|false"
  ).split("|"),
);

/** What stands before or behind a name and belongs to no name. */
const TITLES: ReadonlySet<string> = new Set(
  "mr mrs ms miss mx dr prof sir dame eng ing pe ceng peng jr sr phd".split(" "),
);

/** Letters of these alphabets look alike, and no name mixes them within a word (Unicode Technical Standard 39, 5.1). */
const ALPHABETS = [/\p{Script=Latin}/u, /\p{Script=Cyrillic}/u, /\p{Script=Greek}/u];

/** Letters that write a whole word or syllable: one of them can be a name. */
const WHOLE = /[\p{Script=Han}\p{Script=Hangul}\p{Script=Hiragana}\p{Script=Katakana}]/u;

/** The words of a name in small letters without accents and titles, in the order of the alphabet. */
function wordsOf(name: string): readonly string[] {
  const words = asRead(name)
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/['’ʼ`]/gu, "")
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== "");
  const bare = words.filter((word) => !TITLES.has(word));
  return [...(bare.length > 0 ? bare : words)].sort();
}

/** Somebody, as a document names them. */
export interface Person {
  /** The name as it reads. */
  readonly name: string;
  /** The same for every way of writing the name: `Tallow, R.`, `r. tallow` and `R. Tallow` are `r tallow`. */
  readonly key: string;
}

/** Why a text names nobody; undefined where it does name somebody. */
export function nobodyIn(text: string): string | undefined {
  const read = asRead(text);
  if (isPlaceholder(read) || NOBODY.has(wordsOf(read).join(" ")) || NOBODY.has(read.toLowerCase()))
    return "names nobody";
  const letters = read.match(/\p{L}/gu)?.length ?? 0;
  if (letters < 2 && !WHOLE.test(read)) return "is no whole name";
  const mixed = read
    .split(/[^\p{L}\p{M}]+/u)
    .some((word) => ALPHABETS.filter((alphabet) => alphabet.test(word)).length > 1);
  return mixed ? "mixes letters of several alphabets within a word" : undefined;
}

/** The person a text names; undefined where it names nobody: nothing, a placeholder, a role, letters of two alphabets. */
export function person(text: string | undefined): Person | undefined {
  if (text === undefined || nobodyIn(text) !== undefined) return undefined;
  return { name: asRead(text), key: wordsOf(text).join(" ") };
}

/** Whether each word of the shorter name is a word of the longer one, or its first letter. */
function abbreviates(short: readonly string[], long: readonly string[]): boolean {
  const left = [...long];
  let whole = 0;
  for (const word of [...short].sort((a, b) => b.length - a.length)) {
    const same = left.indexOf(word);
    const found =
      same >= 0 ? same : left.findIndex((other) => (word.length === 1 || other.length === 1) && word[0] === other[0]);
    if (found < 0) return false;
    if (same >= 0 && word.length > 1) whole += 1;
    left.splice(found, 1);
  }
  return whole > 0;
}

/**
 * Whether two names are of one person. `perhaps`: one may be short for the other (`R. Tallow`, `Robin Tallow`), and
 * nothing written tells whether it is.
 */
export function samePerson(one: Person, other: Person): "same" | "perhaps" | "different" {
  if (one.key === other.key) return "same";
  const [short, long] = [one.key.split(" "), other.key.split(" ")].sort((a, b) => a.length - b.length) as [
    string[],
    string[],
  ];
  return abbreviates(short, long) ? "perhaps" : "different";
}
