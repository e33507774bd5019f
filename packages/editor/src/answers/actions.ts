import type { MendEntry, Place } from "@plumbmark/core";
import { cursorAt } from "./cursor.js";
import { formsAt, quantitiesOf } from "./fields.js";
import type { Finding } from "./findings.js";
import type { OpenedFile } from "./opened.js";
import { frontMatterRange, textIn } from "./text.js";
import { isIn, linesOf, zoneOf } from "./zone.js";

/** A change of one place of a file. */
export interface TextChange {
  readonly place: Place;
  readonly text: string;
}

/** Something that can be done at a place. */
export interface Action {
  readonly title: string;
  /** It puts a finding right, or changes what is written. */
  readonly kind: "mend" | "rewrite";
  /** Whether it is the one answer. */
  readonly sure: boolean;
  readonly changes: readonly TextChange[];
  /** What it puts right. */
  readonly finding?: Finding;
}

const brief = (text: string): string => (text.length > 48 ? `${text.slice(0, 45)}…` : text);
const shown = (text: string): string =>
  `\`${brief(text.trim() === "" ? text.replaceAll("\t", "→").replaceAll(" ", "·") : text.trim())}\``;

const titleOf = ({ was, becomes }: MendEntry): string => {
  if (becomes === "") return `Take ${shown(was.replace(/^,|,\s*$/gu, ""))} out`;
  return was.trim() === "" && becomes.trim() !== ""
    ? `Write ${shown(becomes)}`
    : `Write ${shown(becomes)} in place of ${shown(was)}`;
};

const changeOf = ({ at, becomes }: MendEntry): TextChange => ({ place: at, text: becomes });

/** The mends of findings: the sure ones of each together, and every other alone. */
export function mendActions(file: OpenedFile, findings: readonly Finding[]): readonly Action[] {
  return findings.flatMap((finding) => {
    // What was judged may be of an earlier text.
    const mends = (finding.check.mends ?? []).filter(({ at, was }) => textIn(file.text, at) === was);
    const sure = mends.filter((each) => each.sure);
    const [first] = sure;
    const one: readonly Action[] = first
      ? [{ title: sure.map(titleOf).join("; "), kind: "mend", sure: true, changes: sure.map(changeOf), finding }]
      : [];
    const others = mends
      .filter((each) => !each.sure)
      .map((each): Action => ({ title: titleOf(each), kind: "mend", sure: false, changes: [changeOf(each)], finding }));
    return [...one, ...others, ...turnActions(file, finding)];
  });
}

/** The figure a check would hold with; what a licensed person states is asked for and never proposed. */
function turnActions({ model, text }: OpenedFile, finding: Finding): readonly Action[] {
  const { "turns-at": turns } = finding.check;
  if (!turns || turns.asks || !model || model.text !== text) return [];
  const place = model.build.reader.placed.places.get(turns.path);
  const key = model.build.reader.placed.keys.get(turns.path);
  if (!place || !key || model.build.reader.data(turns.path) === undefined || place.line < key.line) return [];
  const was = textIn(text, place);
  if (was === turns.text || String(model.build.reader.data(turns.path)) !== was) return [];
  const becomes = turns.text.replaceAll(/(?<=\d),(?=\d{3})/gu, "");
  return [
    {
      title: `Write ${shown(becomes)} for \`${turns.path}\`: the check holds with it`,
      kind: "mend",
      sure: false,
      changes: [{ place, text: becomes }],
      finding,
    },
  ];
}

/** Makes what is written at a point less than stated: a guess, or a bound. */
export function guessActions(
  file: OpenedFile,
  point: { readonly line: number; readonly column: number },
): readonly Action[] {
  const lines = linesOf(file.text);
  const zone = zoneOf(lines, file.kind);
  const cursor = isIn(zone, point.line) ? cursorAt(file.text, zone, point) : undefined;
  if (cursor?.at !== "value" || cursor.word === "" || /\?$|^at (?:most|least)\b|^["'{[]/u.test(cursor.word)) return [];
  const forms = formsAt(file, cursor.path);
  if (!forms.some(({ guess }) => guess === true) || !/^[\d.]/u.test(cursor.word)) return [];
  const to = (text: string, title: string): Action => ({
    title,
    kind: "rewrite",
    sure: false,
    changes: [{ place: cursor.place, text }],
  });
  const guess = to(`${cursor.word} ?`, `Make ${shown(cursor.word)} a guess`);
  if (quantitiesOf(forms).length === 0) return [guess];
  return [
    guess,
    to(`at most ${cursor.word}`, `Make ${shown(cursor.word)} a bound: at most`),
    to(`at least ${cursor.word}`, `Make ${shown(cursor.word)} a bound: at least`),
  ];
}

/** Takes out what the survey of the venue states as well, so that it is taken from there. */
export function venueActions(file: OpenedFile, findings: readonly Finding[]): readonly Action[] {
  return findings
    .filter(({ rule }) => rule === "venue.agrees")
    .flatMap((finding) => {
      const change = frontMatterRange(file.text, finding.place);
      return change
        ? [
            {
              title: "Take it from the venue: its survey states it",
              kind: "mend" as const,
              sure: false,
              changes: [change],
              finding,
            },
          ]
        : [];
    });
}
