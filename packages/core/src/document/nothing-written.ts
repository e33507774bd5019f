import type { Data } from "./yaml/yaml.js";

/**
 * What a reader cannot see: controls, and what Unicode says to leave out of sight (zero width letters, soft hyphens,
 * marks of direction, variation selectors).
 */
const INVISIBLE = /[\p{Cc}\p{Cf}\p{Default_Ignorable_Code_Point}]/gu;

/** Words of ASCII with a blank between: a text that reads as it is written, as nearly all do. */
const PLAIN = /^[!-~]+(?: [!-~]+)*$/u;

/**
 * A text as it reads: compatible letters in one form (Unicode Standard Annex 15, NFKC), invisible ones left out, blanks
 * folded into one.
 */
export const asRead = (text: string): string =>
  PLAIN.test(text)
    ? text
    : text
        .normalize("NFKC")
        // A tab or a line end parts words; the other controls part nothing.
        .replace(/[\t\n\v\f\r\u0085]+/gu, " ")
        .replace(INVISIBLE, "")
        .normalize("NFKC")
        .replace(/\s+/gu, " ")
        .trim();

/** What is written where something is still to come, in small letters and without its points. */
const PLACEHOLDERS: ReadonlySet<string> = new Set(
  (
    "tbd|tba|tbc|tbs|tbn|tbf|todo|to do|fixme|fix me|fill in|fill me in|to fill in|please fill in|na|n a|n/a|not applicable|" +
    "not available|not known|not stated|not yet|not yet known|unknown|unk|undefined|null|nil|nan|blank|empty|" +
    "pending|later|soon|as advised|see later|to check|to come|placeholder|dummy|foo|bar|" +
    "name|your name|name here|first last|name surname|forename surname|text|your text|lorem ipsum|lorem|ipsum|" +
    "whoever|somebody|someone|some one|anybody|anyone|who|asap|ask|to ask|waiting|awaiting"
  ).split("|"),
);

/** `to be confirmed by the engineer`, `TBC (engineer)`, `awaiting reply`: the first words say it, whatever follows. */
const BEGINS =
  /^(?:tb[acdns]|todo|fixme|n\/a)(?![\p{L}\p{N}])|^(?:still )?to be (?:\p{L}+ed|chosen|done|found|given|known|set|written|worked out|filled in)(?![\p{L}\p{N}])|^(?:yet|still) to (?:be|come)(?![\p{L}\p{N}])|^(?:awaiting|waiting for|pending)(?![\p{L}\p{N}])|^not (?:yet )?(?:confirmed|known|decided|stated|written|available)(?![\p{L}\p{N}])/u;

/** Nothing but points, strokes and signs, or one letter over and over: `?`, `---`, `…`, `xxx`. */
const SIGNS = /^[^\p{L}\p{N}]*$|^([xyz_.])\1*$/u;

/** A text in brackets that asks for another: `<name>`, `[engineer]`, `{{who}}`. */
const ASKS = /^(?:<[^<>]*>|\[[^[\]]*\]|\{+[^{}]*\}+)$/u;

/**
 * Whether a text only holds a place for what is not known yet: empty, `TBD`, `?`, `n/a`, `to be confirmed`, with
 * whatever invisible letters in it. `none` is an answer, and no placeholder: see `person` for names.
 */
export function isPlaceholder(text: string): boolean {
  const read = asRead(text).toLowerCase();
  const bare = read
    .replace(/[.:!?…"'`*_()]+/gu, " ")
    .replace(/\s+/gu, " ")
    .trim();
  const joined = read.replace(/[.:!?…"'`*_()\s]+/gu, "");
  return (
    SIGNS.test(read) ||
    ASKS.test(read) ||
    PLACEHOLDERS.has(bare) ||
    PLACEHOLDERS.has(joined) ||
    BEGINS.test(bare) ||
    SIGNS.test(bare)
  );
}

/**
 * Whether what stands somewhere says nothing: not there, empty, a placeholder, a list or a group of keys that holds
 * nothing else. A number, `true` and `false` always say something.
 */
export function isNothingWritten(data: Data | undefined): boolean {
  if (data === null || data === undefined) return true;
  if (typeof data === "string") return isPlaceholder(data);
  if (typeof data !== "object") return false;
  return Object.values(data).every(isNothingWritten);
}

/** Answers that say there is none, in small letters: no licence, nothing it is fixed to, no barrier. */
const DENIALS: ReadonlySet<string> = new Set(
  (
    "none|no|not|nothing|never|without|without one|nowhere|not at all|no one|nobody|not needed|not necessary|not required|" +
    "not fixed|unfixed|loose|free standing|freestanding|unlicensed|unlicenced|not licensed|no licence|no license|" +
    "applied for|expired|lapsed|not kept clear|open to all|open to the public"
  ).split("|"),
);

/** A text as `written`, of which `none`, `nothing` and their like are no answer: of what has to be there. */
export function affirmed(data: Data | undefined): string | undefined {
  const read = written(data);
  const bare = read
    ?.toLowerCase()
    .replace(/[.,:;!?…"'`*_()-]+/gu, " ")
    .replace(/\s+/gu, " ")
    .trim();
  return bare === undefined || DENIALS.has(bare) ? undefined : read;
}

/** A text as it reads; undefined where nothing is written, or a question mark at its end says that it is a guess. */
export function written(data: Data | undefined): string | undefined {
  if (typeof data !== "string" || isPlaceholder(data)) return undefined;
  const read = asRead(data);
  return read.endsWith("?") ? undefined : read;
}
