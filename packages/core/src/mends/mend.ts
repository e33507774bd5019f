import { textAt } from "../document/edited.js";
import type { Mistake } from "../document/mistake.js";
import type { Place } from "../document/place.js";
import type { MendEntry } from "../inspection/record.js";
import type { Build } from "../model/build.js";
import { LOOKED_AT, note } from "../model/reading/reads.js";
import { entryInBraces } from "./entry-in-braces.js";

/** A change of its document by which a rule would have a check put right. */
export interface Mend {
  /** The path of a value in the front matter, or a place in the body. */
  readonly at: string | Place;
  /**
   * What is to stand there, as it is written: of a value, as YAML. Undefined takes the entry at this path out, with its
   * key, where it stands in braces; where it has lines of its own nothing is offered.
   */
  readonly becomes: string | undefined;
  /**
   * Whether it is the one answer, which `plumbmark mend` writes without asking. Else it is one of several, or needs a
   * person: an editor offers it, and nothing writes it by itself.
   */
  readonly sure: boolean;
}

const entryOf = (
  { line, column, endLine, endColumn }: Place,
  was: string,
  becomes: string,
  sure: boolean,
): MendEntry => ({
  at: { line, column, endLine, endColumn },
  was,
  becomes,
  sure,
});

/** A scalar as it is written, without its quotes. */
const unquoted = (raw: string): string => /^(["'])(.*)\1$/su.exec(raw)?.[2] ?? raw;

/** Whether a text of the file is a value as it was read: what is copied from another entry stands somewhere else. */
const isWritten = (raw: string, data: unknown): boolean =>
  (typeof data === "string" && unquoted(raw) === data) ||
  (typeof data === "number" && raw.trim() !== "" && Number(raw) === data) ||
  (typeof data === "boolean" && raw === String(data));

/** The mends of a rule with their places; one that leads to nothing that is written is left out. */
export function placedMends(
  mends: readonly Mend[] | undefined,
  { reader, text }: Pick<Build, "reader" | "text">,
): readonly MendEntry[] {
  // What is laid over a document stands in no text.
  if (!mends) return [];
  note(LOOKED_AT.text);
  if (reader.placed.laidOver) return [];
  return mends.flatMap(({ at, becomes, sure }) => {
    const place = typeof at === "string" ? reader.placed.places.get(at) : at;
    if (!place) return [];
    if (becomes === undefined) {
      const key = typeof at === "string" ? reader.placed.keys.get(at) : undefined;
      const whole = textAt(text, { ...place, column: 1, endLine: place.line + 1, endColumn: 1 }).trimEnd();
      const entry = key && entryInBraces(whole, key, place);
      return entry ? [entryOf(entry, textAt(text, entry), "", sure)] : [];
    }
    const was = textAt(text, place);
    if (was === becomes || (typeof at === "string" && !isWritten(was, reader.data(at)))) return [];
    return [entryOf(place, was, becomes, sure)];
  });
}

/** The mends of a mistake in a text: what was most likely meant, and what else could be meant. */
export function mendsOfMistake({ edit, offers = [] }: Mistake, text: string): readonly MendEntry[] {
  const all = [
    ...(edit ? [{ ...edit, sure: edit.sure === true }] : []),
    ...offers.map((each) => ({ ...each, sure: false })),
  ];
  const made = all.flatMap(({ place, text: put, sure }) => {
    const was = textAt(text, place);
    // Where nothing is written, the value comes behind the colon of its key.
    const becomes =
      was === "" && textAt(text, { ...place, column: Math.max(1, place.column - 1) }) === ":" ? ` ${put}` : put;
    return was === becomes ? [] : [entryOf(place, was, becomes, sure)];
  });
  return made.filter(({ becomes }, index) => made.findIndex((each) => each.becomes === becomes) === index);
}
